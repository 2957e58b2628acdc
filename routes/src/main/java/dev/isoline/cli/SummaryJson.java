package dev.isoline.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.isoline.ecg.analysis.Summary;
import java.time.Duration;

/** A summary as JSON; the schema is docs/analyse-json.md. */
final class SummaryJson {

    private static final int VERSION = 1;

    private SummaryJson() {}

    static String of(Summary s) {
        var json = JsonNodeFactory.instance.objectNode();
        json.put("version", VERSION)
                .put("status", "preliminary")
                .put("notice", SummaryText.PRELIMINARY);
        s.start()
                .ifPresentOrElse(
                        start -> json.put("start", start.toString()), () -> json.putNull("start"));
        json.put("recordedSeconds", seconds(s.recorded()));
        json.put("analysableSeconds", seconds(s.analysable()));
        json.put("samplingFrequency", s.hz());
        s.detectionLeads().forEach(json.putArray("detectionLeads")::add);
        json.put("beats", s.beats());
        classes(json, s);
        json.set("heartRate", s.rate().map(SummaryJson::rate).orElse(null));
        hours(json, s);
        intervals(json, s);
        json.set(
                "heartRateVariability", s.variability().map(SummaryJson::variability).orElse(null));
        settings(json.putObject("settings"), s);
        s.notes().forEach(json.putArray("notes")::add);
        return json.toPrettyString() + System.lineSeparator();
    }

    private static void classes(ObjectNode json, Summary s) {
        if (s.classified().isEmpty()) {
            json.putNull("beatsByClass");
            return;
        }
        var classes = json.putObject("beatsByClass");
        s.classified().forEach((kind, count) -> classes.put(kind.name(), count));
    }

    private static void hours(ObjectNode json, Summary s) {
        var hours = json.putArray("hours");
        for (var hour : s.hours()) {
            hours.addObject()
                    .put("fromSeconds", seconds(hour.from()))
                    .put("beats", hour.beats())
                    .set("heartRate", hour.rate().map(SummaryJson::rate).orElse(null));
        }
    }

    private static void intervals(ObjectNode json, Summary s) {
        json.set("longestRr", s.longestRr().map(SummaryJson::interval).orElse(null));
        var pauses = json.putArray("pauses");
        s.pauses().forEach(pause -> pauses.add(interval(pause)));
    }

    private static ObjectNode rate(Summary.Rate rate) {
        return JsonNodeFactory.instance
                .objectNode()
                .put("mean", rate.mean())
                .put("min", rate.min())
                .put("minAtSeconds", seconds(rate.minAt()))
                .put("max", rate.max())
                .put("maxAtSeconds", seconds(rate.maxAt()));
    }

    private static ObjectNode interval(Summary.Interval interval) {
        return JsonNodeFactory.instance
                .objectNode()
                .put("atSeconds", seconds(interval.at()))
                .put("seconds", seconds(interval.length()));
    }

    private static ObjectNode variability(Summary.Variability v) {
        return JsonNodeFactory.instance
                .objectNode()
                .put("nnIntervals", v.intervals())
                .put("sdnnMilliseconds", v.sdnn())
                .put("rmssdMilliseconds", v.rmssd())
                .put("pnn50Percent", v.pnn50());
    }

    private static void settings(ObjectNode settings, Summary s) {
        settings.put("pauseSeconds", seconds(s.settings().pause()));
        settings.put("rateBeats", s.settings().rateBeats());
    }

    private static double seconds(Duration duration) {
        return duration.toNanos() / 1e9;
    }
}
