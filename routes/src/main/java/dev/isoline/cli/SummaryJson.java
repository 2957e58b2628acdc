package dev.isoline.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.isoline.ecg.summary.Episode;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.HeartRates;
import dev.isoline.ecg.summary.Summary;
import dev.isoline.ecg.summary.Threshold;
import dev.isoline.ecg.summary.Variability;
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
        s.coverage()
                .start()
                .ifPresentOrElse(
                        start -> json.put("start", start.toString()), () -> json.putNull("start"));
        json.put("recordedSeconds", seconds(s.coverage().recorded()));
        json.put("analysableSeconds", seconds(s.coverage().analysable()));
        json.put("samplingFrequency", s.coverage().hz());
        s.coverage().detectionLeads().forEach(json.putArray("detectionLeads")::add);
        json.put("beats", s.beats().total());
        classes(json, s);
        json.set("heartRate", s.rates().whole().map(SummaryJson::rate).orElse(null));
        hours(json, s);
        intervals(json, s);
        json.set("heartRateVariability", variability(s.variability()));
        settings(json.putObject("settings"), s);
        s.notes().forEach(json.putArray("notes")::add);
        return json.toPrettyString() + System.lineSeparator();
    }

    private static void classes(ObjectNode json, Summary s) {
        if (s.beats().classified().isEmpty()) {
            json.putNull("beatsByClass");
            return;
        }
        var classes = json.putObject("beatsByClass");
        s.beats().classified().forEach((kind, count) -> classes.put(kind.name(), count));
    }

    private static void hours(ObjectNode json, Summary s) {
        var hours = json.putArray("hours");
        for (var hour : s.rates().hours()) {
            hours.addObject()
                    .put("fromSeconds", seconds(hour.from()))
                    .put("beats", hour.beats())
                    .set("heartRate", hour.rate().map(SummaryJson::rate).orElse(null));
        }
    }

    private static void intervals(ObjectNode json, Summary s) {
        json.set("longestRr", s.rates().longestRr().map(SummaryJson::interval).orElse(null));
        var pauses = json.putArray("pauses");
        s.rhythm().of(EpisodeKind.PAUSE).forEach(pause -> pauses.add(pause(pause)));
    }

    private static ObjectNode rate(HeartRates.Rate rate) {
        return JsonNodeFactory.instance
                .objectNode()
                .put("mean", rate.mean())
                .put("min", rate.min())
                .put("minAtSeconds", seconds(rate.minAt()))
                .put("max", rate.max())
                .put("maxAtSeconds", seconds(rate.maxAt()));
    }

    private static ObjectNode interval(HeartRates.Interval interval) {
        return JsonNodeFactory.instance
                .objectNode()
                .put("atSeconds", seconds(interval.at()))
                .put("seconds", seconds(interval.length()));
    }

    private static ObjectNode pause(Episode pause) {
        return interval(new HeartRates.Interval(pause.start(), pause.duration()));
    }

    private static ObjectNode variability(Variability v) {
        return JsonNodeFactory.instance
                .objectNode()
                .put("nnIntervals", v.intervals())
                .put("sdnnMilliseconds", v.sdnn().value().orElse(null))
                .put("rmssdMilliseconds", v.rmssd().value().orElse(null))
                .put("pnn50Percent", v.pnn50().value().orElse(null));
    }

    private static void settings(ObjectNode settings, Summary s) {
        settings.put("pauseSeconds", s.settings().value(Threshold.PAUSE));
        settings.put("rateBeats", s.settings().count(Threshold.RATE_BEATS));
    }

    private static double seconds(Duration duration) {
        return duration.toNanos() / 1e9;
    }
}
