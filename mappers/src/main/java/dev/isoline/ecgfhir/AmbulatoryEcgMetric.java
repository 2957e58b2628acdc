package dev.isoline.ecgfhir;

import java.util.List;

/**
 * What is measured in an ambulatory ECG, beside ectopy and episodes. LOINC 2.82 has no code for
 * most of it, so each has one of the project's own (CodeSystem-ambulatory-ecg-metric.json), and the
 * LOINC code before it where there is one. Source of the LOINC codes: public implementation guides
 * whose codes were checked against LOINC 2.81/2.82 on the HL7 terminology server.
 */
public enum AmbulatoryEcgMetric implements Metric {
    // spotless:off
    //                         code                                   display                                                                  unit       LOINC
    RATE_PANEL             ("heart-rate-panel",                   "Heart rate over the recording",                                         "",        ""),
    RATE_MEAN              ("heart-rate-mean",                    "Heart rate mean over the recording",                                    "/min",    ""),
    RATE_MIN               ("heart-rate-min",                     "Heart rate minimum over the recording",                                 "/min",    ""),
    RATE_MIN_TIME          ("heart-rate-min-time",                "Time of the heart rate minimum",                                        "",        ""),
    RATE_MAX               ("heart-rate-max",                     "Heart rate maximum over the recording",                                 "/min",    ""),
    RATE_MAX_TIME          ("heart-rate-max-time",                "Time of the heart rate maximum",                                        "",        ""),
    HOURLY_PANEL           ("hourly-panel",                       "Heart rate and beats hour by hour",                                     "",        ""),
    HOURLY_ANALYSABLE      ("hourly-analysable-time",             "Time analysable of each hour",                                          "min",     ""),
    HOURLY_RATE_MEAN       ("hourly-heart-rate-mean",             "Heart rate mean of each hour",                                          "/min",    ""),
    HOURLY_RATE_MIN        ("hourly-heart-rate-min",              "Heart rate minimum of each hour",                                       "/min",    ""),
    HOURLY_RATE_MAX        ("hourly-heart-rate-max",              "Heart rate maximum of each hour",                                       "/min",    ""),
    HOURLY_BEATS           ("hourly-beats",                       "Beats of each hour",                                                    "{beats}", ""),
    HOURLY_VENTRICULAR     ("hourly-ventricular-ectopics",        "Ventricular ectopic beats of each hour",                                "{beats}", ""),
    HOURLY_SUPRAVENTRICULAR("hourly-supraventricular-ectopics",   "Supraventricular ectopic beats of each hour",                           "{beats}", ""),
    PAUSE_PANEL            ("pause-panel",                        "Pauses and longest R-R interval",                                       "",        ""),
    PAUSE_COUNT            ("pause-count",                        "Pauses",                                                                "{count}", ""),
    PAUSE_THRESHOLD        ("pause-threshold",                    "Shortest R-R interval counted as a pause",                              "ms",      ""),
    LONGEST_RR             ("rr-interval-max",                    "Longest R-R interval",                                                  "ms",      "76638-6"),
    LONGEST_RR_TIME        ("rr-interval-max-time",               "Time of the longest R-R interval",                                      "",        ""),
    PAUSE                  ("pause",                              "Pause",                                                                 "ms",      ""),
    EPISODE                ("rhythm-episode",                     "Episode of a rhythm",                                                   "",        ""),
    EPISODE_DURATION       ("rhythm-episode-duration",            "Duration of the episode",                                               "s",       ""),
    EPISODE_BEATS          ("rhythm-episode-beats",               "Beats of the episode",                                                  "{beats}", ""),
    EPISODE_RATE_MEAN      ("rhythm-episode-rate-mean",           "Heart rate mean in the episode",                                        "/min",    ""),
    EPISODE_RATE_MIN       ("rhythm-episode-rate-min",            "Heart rate minimum in the episode",                                     "/min",    ""),
    EPISODE_RATE_MAX       ("rhythm-episode-rate-max",            "Heart rate maximum in the episode",                                     "/min",    ""),
    HRV_PANEL              ("heart-rate-variability-panel",       "Heart rate variability, time domain",                                   "",        ""),
    SDNN                   ("sdnn",                               "Standard deviation of NN intervals (SDNN)",                             "ms",      "76643-6 112429-6"),
    SDANN                  ("sdann",                              "Standard deviation of the 5-minute means of NN intervals (SDANN)",      "ms",      ""),
    SDNN_INDEX             ("sdnn-index",                         "Mean of the 5-minute standard deviations of NN intervals (SDNN index)", "ms",      ""),
    RMSSD                  ("rmssd",                              "Root mean square of successive NN differences (RMSSD)",                 "ms",      ""),
    PNN50                  ("pnn50",                              "Successive NN differences over 50 ms (pNN50)",                          "%",       ""),
    TRIANGULAR_INDEX       ("hrv-triangular-index",               "Triangular index of NN intervals",                                      "1",       ""),
    NN_INTERVALS           ("nn-interval-count",                  "NN intervals measured",                                                 "{count}", ""),
    NN_TIME                ("nn-interval-time",                   "Sum of the NN intervals measured",                                      "h",       ""),
    QUALITY_PANEL          ("recording-quality-panel",            "Recording time and quality",                                            "",        ""),
    RECORDED_TIME          ("recorded-time",                      "Time recorded, gaps left out",                                          "h",       ""),
    ANALYSABLE_TIME        ("analysable-time",                    "Time analysable",                                                       "h",       ""),
    ANALYSABLE_SHARE       ("analysable-share",                   "Analysable time as share of the time recorded",                         "%",       ""),
    SAMPLING_FREQUENCY     ("sampling-frequency",                 "Sampling frequency",                                                    "Hz",      ""),
    DETECTION_LEADS        ("detection-leads",                    "Leads the beats were detected on",                                      "",        ""),
    THRESHOLDS             ("analysis-thresholds",                "Thresholds of the analysis",                                            "",        ""),
    LEAD_PANEL             ("lead-quality-panel",                 "Signal quality of a lead",                                              "",        ""),
    LEAD                   ("lead-label",                         "Lead",                                                                  "",        ""),
    LEAD_RECORDED          ("lead-recorded-time",                 "Time recorded of the lead",                                             "min",     ""),
    LEAD_USABLE            ("lead-usable-time",                   "Time usable of the lead",                                               "min",     ""),
    LEAD_USABLE_SHARE      ("lead-usable-share",                  "Usable time as share of the time recorded of the lead",                 "%",       ""),
    LEAD_AMPLITUDE         ("lead-qrs-amplitude",                 "Typical QRS amplitude of the lead, peak to peak",                       "uV",      ""),
    LEAD_OFF               ("lead-off-time",                      "Time with the lead off",                                                "min",     ""),
    LEAD_SATURATED         ("lead-saturated-time",                "Time with the lead saturated",                                          "min",     ""),
    LEAD_MAINS             ("lead-mains-noise-time",              "Time with mains noise on the lead",                                     "min",     ""),
    LEAD_MUSCLE            ("lead-muscle-noise-time",             "Time with muscle noise on the lead",                                    "min",     ""),
    LEAD_WANDER            ("lead-baseline-wander-time",          "Time with baseline wander on the lead",                                 "min",     ""),
    LEAD_BURIED            ("lead-buried-time",                   "Time with QRS complexes lost in noise on the lead",                     "min",     ""),
    BEAT_PANEL             ("beat-panel",                         "Beats by class",                                                        "",        ""),
    BEATS                  ("beat-count",                         "Beats detected",                                                        "{beats}", ""),
    NORMAL_BEATS           ("normal-beat-count",                  "Beats of class N",                                                      "{beats}", ""),
    FUSION_BEATS           ("fusion-beat-count",                  "Fusion beats",                                                          "{beats}", ""),
    OTHER_BEATS            ("paced-or-unclassifiable-beat-count", "Paced and unclassifiable beats",                                        "{beats}", ""),
    UNCLASSIFIED_BEATS     ("unclassified-beat-count",            "Beats nobody classified",                                               "{beats}", ""),
    RECORDING              ("recording",                          "Ambulatory ECG recording as the recorder wrote it",                     "",        "");
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

    @Override
    public String code() {
        return code;
    }

    @Override
    public String display() {
        return display;
    }

    @Override
    public String unit() {
        return unit;
    }

    @Override
    public List<String> loinc() {
        return loinc;
    }
}
