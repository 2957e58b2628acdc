package dev.isoline.ecgfhir;

import dev.isoline.fhir.Systems;
import java.util.List;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;

/**
 * What is measured in an ambulatory ECG. LOINC 2.82 has no code for most of it, so each has one of
 * the project's own (CodeSystem-ambulatory-ecg-metric.json), and the LOINC code before it where
 * there is one. Source of the LOINC codes: public implementation guides whose codes were checked
 * against LOINC 2.81/2.82 on the HL7 terminology server.
 */
public enum AmbulatoryEcgMetric {
    // spotless:off
    //                       code                          display                                              unit       LOINC
    RATE_PANEL              ("heart-rate-panel",           "Heart rate over the recording",                     "",        ""),
    RATE_MEAN               ("heart-rate-mean",            "Heart rate mean over the recording",                "/min",    ""),
    RATE_MIN                ("heart-rate-min",             "Heart rate minimum over the recording",             "/min",    ""),
    RATE_MIN_TIME           ("heart-rate-min-time",        "Time of the heart rate minimum",                    "",        ""),
    RATE_MAX                ("heart-rate-max",             "Heart rate maximum over the recording",             "/min",    ""),
    RATE_MAX_TIME           ("heart-rate-max-time",        "Time of the heart rate maximum",                    "",        ""),
    HOURLY_PANEL            ("hourly-panel",               "Heart rate and beats hour by hour",                 "",        ""),
    HOURLY_RATE_MEAN        ("hourly-heart-rate-mean",     "Heart rate mean of each hour",                      "/min",    ""),
    HOURLY_RATE_MIN         ("hourly-heart-rate-min",      "Heart rate minimum of each hour",                   "/min",    ""),
    HOURLY_RATE_MAX         ("hourly-heart-rate-max",      "Heart rate maximum of each hour",                   "/min",    ""),
    HOURLY_BEATS            ("hourly-beats",               "Beats of each hour",                                "{beats}", ""),
    VE_PANEL                ("ventricular-ectopy-panel",   "Ventricular ectopy",                                "",        ""),
    VE_COUNT                ("ventricular-ectopic-count",  "Ventricular ectopic beats",                         "{beats}", "76126-2"),
    VE_PER_HOUR             ("ventricular-ectopic-hourly", "Ventricular ectopic beats per analysable hour",     "/h",      ""),
    VE_SHARE                ("ventricular-ectopic-share",  "Ventricular ectopic beats as share of all beats",   "%",       ""),
    SVE_PANEL               ("supraventricular-ectopy-panel", "Supraventricular ectopy",                        "",        ""),
    SVE_COUNT               ("supraventricular-ectopic-count", "Supraventricular ectopic beats",                "{beats}", ""),
    SVE_PER_HOUR            ("supraventricular-ectopic-hourly", "Supraventricular ectopic beats per analysable hour", "/h", ""),
    SVE_SHARE               ("supraventricular-ectopic-share", "Supraventricular ectopic beats as share of all beats", "%", ""),
    PAUSE_PANEL             ("pause-panel",                "Pauses and longest R-R interval",                   "",        ""),
    PAUSE_COUNT             ("pause-count",                "Pauses",                                            "{count}", ""),
    PAUSE_THRESHOLD         ("pause-threshold",            "Shortest R-R interval counted as a pause",          "ms",      ""),
    LONGEST_RR              ("rr-interval-max",            "Longest R-R interval",                              "ms",      "76638-6"),
    LONGEST_RR_TIME         ("rr-interval-max-time",       "Time of the longest R-R interval",                  "",        ""),
    PAUSE                   ("pause",                      "Pause",                                             "ms",      ""),
    HRV_PANEL               ("heart-rate-variability-panel", "Heart rate variability, time domain",             "",        ""),
    SDNN                    ("sdnn",                       "Standard deviation of NN intervals (SDNN)",         "ms",      "76643-6 112429-6"),
    RMSSD                   ("rmssd",                      "Root mean square of successive NN differences (RMSSD)", "ms",  ""),
    PNN50                   ("pnn50",                      "Successive NN differences over 50 ms (pNN50)",      "%",       ""),
    NN_INTERVALS            ("nn-interval-count",          "NN intervals measured",                             "{count}", ""),
    QUALITY_PANEL           ("recording-quality-panel",    "Recording time and quality",                        "",        ""),
    RECORDED_TIME           ("recorded-time",              "Time recorded, gaps left out",                      "h",       ""),
    ANALYSABLE_TIME         ("analysable-time",            "Time analysable",                                   "h",       ""),
    ANALYSABLE_SHARE        ("analysable-share",           "Analysable time as share of the time recorded",     "%",       ""),
    BEATS                   ("beat-count",                 "Beats detected",                                    "{beats}", ""),
    DETECTION_LEADS         ("detection-leads",            "Leads the beats were detected on",                  "",        ""),
    RECORDING               ("recording",                  "Ambulatory ECG recording as the recorder wrote it", "",        "");
    // spotless:on

    private final String code;
    private final String display;
    private final String unit;
    private final List<String> loinc;

    AmbulatoryEcgMetric(String code, String display, String unit, String loinc) {
        this.code = code;
        this.display = display;
        this.unit = unit;
        this.loinc = loinc.isEmpty() ? List.of() : List.of(loinc.split(" "));
    }

    public String code() {
        return code;
    }

    public String display() {
        return display;
    }

    /** UCUM; empty when the value is no quantity. */
    public String unit() {
        return unit;
    }

    /** LOINC codes of the same meaning, the older first; mostly none. */
    public List<String> loinc() {
        return loinc;
    }

    /** LOINC where there is one, then our own; {@code text} names it for a reader. */
    CodeableConcept concept() {
        var concept = new CodeableConcept().setText(display);
        loinc.forEach(c -> concept.addCoding(new Coding(Systems.LOINC, c, null)));
        concept.addCoding(new Coding(Systems.METRIC, code, display));
        return concept;
    }
}
