package dev.isoline.cli;

import dev.isoline.ecg.summary.Disturbance;
import dev.isoline.ecg.summary.LeadReport;
import dev.isoline.ecg.summary.MinuteQuality;
import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Map;

/** Signal quality of the leads as JSON: each as a whole, then minute by minute. */
final class LeadJson {

    private final JsonFields json;

    LeadJson(JsonFields json) {
        this.json = json;
    }

    void leads(List<LeadReport> leads) throws IOException {
        json.objects("leads", leads, this::lead);
    }

    private void lead(LeadReport lead) throws IOException {
        json.text("label", lead.label());
        json.seconds("recordedSeconds", lead.recorded());
        json.seconds("usableSeconds", lead.usable());
        json.number("usablePercent", 100 * lead.usableShare());
        json.object("disturbedSeconds", lead.disturbed(), this::disturbed);
        json.number("amplitudeMicrovolts", lead.amplitude());
        json.lines("minutes", lead.minutes(), this::minute);
    }

    private void disturbed(Map<Disturbance, Duration> times) throws IOException {
        for (var kind : Disturbance.values()) {
            json.seconds(RhythmJson.name(kind), times.getOrDefault(kind, Duration.ZERO));
        }
    }

    private void minute(MinuteQuality minute) throws IOException {
        json.count("minute", minute.minute());
        json.count("recordedSeconds", minute.recorded());
        json.count("usableSeconds", minute.usable());
        json.object("disturbedSeconds", minute.disturbed(), this::seconds);
        json.object("levels", minute.levels(), this::levels);
    }

    /** Kinds that were found. */
    private void seconds(Map<Disturbance, Integer> seconds) throws IOException {
        for (var of : seconds.entrySet()) {
            json.count(RhythmJson.name(of.getKey()), of.getValue());
        }
    }

    private void levels(MinuteQuality.Levels levels) throws IOException {
        json.count("amplitudeMicrovolts", levels.amplitude());
        json.count("mainsMicrovolts", levels.mains());
        json.count("muscleMicrovolts", levels.muscle());
        json.count("wanderMicrovolts", levels.wander());
    }
}
