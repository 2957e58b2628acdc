package dev.isoline.cli;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.BeatCounts;
import dev.isoline.ecg.summary.Coverage;
import dev.isoline.ecg.summary.HeartRates;
import dev.isoline.ecg.summary.Measure;
import dev.isoline.ecg.summary.Summary;
import dev.isoline.ecg.summary.Threshold;
import dev.isoline.ecg.summary.Variability;
import java.io.IOException;
import java.io.Writer;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * A summary as JSON: docs/analyse-json.md in words, analyse-summary.schema.json of the conformance
 * module as JSON Schema.
 */
final class SummaryJson {

    private static final int VERSION = 1;

    private final JsonFields json;

    private SummaryJson(JsonFields json) {
        this.json = json;
    }

    /** Ends with a line break; leaves the writer open. */
    static void write(Summary summary, Writer out) throws IOException {
        var json = new JsonFields(out);
        json.object(summary, new SummaryJson(json)::summary);
        json.end();
    }

    private void summary(Summary summary) throws IOException {
        json.count("version", VERSION);
        json.text("status", "preliminary");
        json.text("notice", SummaryText.PRELIMINARY);
        coverage(summary.coverage());
        beats(summary.beats());
        rates(summary);
        new RhythmJson(json).rhythm(summary.rhythm());
        json.object("heartRateVariability", summary.variability(), this::variability);
        new LeadJson(json).leads(summary.coverage().leads());
        json.object("settings", summary.settings(), this::settings);
        json.texts("notes", summary.notes());
    }

    private void coverage(Coverage coverage) throws IOException {
        json.text("start", coverage.start().map(Object::toString));
        json.seconds("recordedSeconds", coverage.recorded());
        json.seconds("analysableSeconds", coverage.analysable());
        json.number("analysablePercent", coverage.analysablePercent());
        json.number("samplingFrequency", coverage.hz());
        json.texts("detectionLeads", coverage.detectionLeads());
    }

    private void beats(BeatCounts beats) throws IOException {
        json.count("beats", beats.total());
        var classes = Optional.of(beats.classified()).filter(counts -> !counts.isEmpty());
        json.object("beatsByClass", classes, this::classes);
        var ectopy = new RhythmJson(json);
        json.object("ventricular", beats.ventricular(), ectopy::ectopy);
        json.object("supraventricular", beats.supraventricular(), ectopy::ectopy);
    }

    private void classes(Map<Beat.Kind, Long> counts) throws IOException {
        for (var count : counts.entrySet()) {
            json.count(count.getKey().name(), count.getValue());
        }
    }

    private void rates(Summary summary) throws IOException {
        HeartRates rates = summary.rates();
        boolean classified = !summary.beats().classified().isEmpty();
        json.object("heartRate", rates.whole(), this::rate);
        json.objects("hours", rates.hours(), hour -> hour(hour, classified));
        json.object("longestRr", rates.longestRr(), this::interval);
    }

    private void rate(HeartRates.Rate rate) throws IOException {
        json.number("mean", rate.mean());
        json.number("min", rate.min());
        json.seconds("minAtSeconds", rate.minAt());
        json.number("max", rate.max());
        json.seconds("maxAtSeconds", rate.maxAt());
    }

    private void hour(HeartRates.Hour hour, boolean classified) throws IOException {
        json.seconds("fromSeconds", hour.from());
        json.seconds("analysableSeconds", hour.analysable());
        json.count("beats", hour.beats());
        json.count("ventricular", counted(hour.ventricular(), classified));
        json.count("supraventricular", counted(hour.supraventricular(), classified));
        json.object("heartRate", hour.rate(), this::rate);
    }

    private static Optional<Long> counted(long beats, boolean classified) {
        return classified ? Optional.of(beats) : Optional.empty();
    }

    private void interval(HeartRates.Interval interval) throws IOException {
        json.seconds("atSeconds", interval.at());
        json.seconds("seconds", interval.length());
    }

    private void variability(Variability v) throws IOException {
        json.count("nnIntervals", v.intervals());
        json.seconds("analysedSeconds", v.analysed());
        var measures = new LinkedHashMap<String, Measure>();
        measures.put("sdnnMilliseconds", v.sdnn());
        measures.put("sdannMilliseconds", v.sdann());
        measures.put("sdnnIndexMilliseconds", v.sdnnIndex());
        measures.put("rmssdMilliseconds", v.rmssd());
        measures.put("pnn50Percent", v.pnn50());
        measures.put("triangularIndex", v.triangularIndex());
        for (var measure : measures.entrySet()) {
            json.number(measure.getKey(), measure.getValue().value());
        }
        json.object("refused", measures, this::refused);
    }

    private void refused(Map<String, Measure> measures) throws IOException {
        for (var measure : measures.entrySet()) {
            if (measure.getValue().refusal().isPresent()) {
                json.text(measure.getKey(), measure.getValue().refusal().get());
            }
        }
    }

    private void settings(AnalysisSettings settings) throws IOException {
        json.number("pauseSeconds", settings.value(Threshold.PAUSE));
        json.count("rateBeats", settings.count(Threshold.RATE_BEATS));
        json.object("thresholds", settings, this::thresholds);
    }

    private void thresholds(AnalysisSettings settings) throws IOException {
        for (var threshold : Threshold.values()) {
            json.number(threshold.key(), settings.value(threshold));
        }
    }
}
