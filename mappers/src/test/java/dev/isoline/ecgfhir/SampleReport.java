package dev.isoline.ecgfhir;

import dev.isoline.attach.SampleOrder;
import dev.isoline.ecg.Beat;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Coverage;
import dev.isoline.ecg.summary.HeartRates;
import dev.isoline.ecg.summary.HeartRates.Hour;
import dev.isoline.ecg.summary.HeartRates.Interval;
import dev.isoline.ecg.summary.HeartRates.Rate;
import dev.isoline.ecg.summary.MadeSummary;
import dev.isoline.ecg.summary.Summary;
import dev.isoline.ecg.summary.Variability;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;

/** Two hours and a half over the end of summer time in Lisbon, 2026-10-25 02:00 (IANA tz). */
final class SampleReport {

    static final SampleOrder ORDER = new SampleOrder();

    static final LocalDateTime START = LocalDateTime.parse("2026-10-25T00:30:00");

    static final Rate RATE = new Rate(71.6, 48.2, minutes(100), 131.5, minutes(20));

    static final List<Interval> PAUSES =
            List.of(
                    new Interval(minutes(45), Duration.ofMillis(2100)),
                    new Interval(minutes(100), Duration.ofMillis(2840)));

    static final Summary CLASSIFIED =
            summary(
                    Optional.of(START),
                    Map.of(Beat.Kind.N, 10_000L, Beat.Kind.V, 240L),
                    Optional.of(RATE),
                    PAUSES,
                    MadeSummary.variability(9_800, 131.25, 28.04, 6.549));

    static final Summary BARE =
            summary(Optional.empty(), Map.of(), Optional.empty(), PAUSES, MadeSummary.TOO_SHORT);

    static final List<WaveformObject> OBJECTS =
            List.of(object("1", 1, "2026-10-24T23:30:00Z"), object("2", 2, "2026-10-25T01:30:00Z"));

    private SampleReport() {}

    static ReportContext context() {
        var recording =
                new RecordingFile(
                        "ab".repeat(32),
                        "da39a3ee5e6b4b0d3255bfef95601890afd80709",
                        5_400_000_000L / 1000,
                        "application/octet-stream",
                        "EDF+C",
                        "Recorder 12 of ward 3",
                        Instant.parse("2026-10-26T08:00:00Z"));
        return new ReportContext(
                ORDER.order.getIdPart(),
                ORDER.order,
                ORDER.patient,
                List.of(ORDER.role, ORDER.clinician, ORDER.clinic),
                recording,
                ZoneId.of("Europe/Lisbon"),
                Instant.parse("2026-10-26T08:05:00Z"),
                "0.1.0");
    }

    static Bundle bundle() {
        return ReportBundle.of(context(), CLASSIFIED, OBJECTS);
    }

    static Summary summary(
            Optional<LocalDateTime> start,
            Map<Beat.Kind, Long> classified,
            Optional<Rate> rate,
            List<Interval> pauses,
            Variability variability) {
        var hours =
                List.of(
                        hour(0, 5_000, rate),
                        hour(60, 5_240, rate),
                        hour(120, 0, Optional.empty()));
        return new Summary(
                new Coverage(
                        start,
                        minutes(150),
                        minutes(120),
                        200,
                        List.of("MLII"),
                        List.of(SampleRhythm.LEAD)),
                SampleRhythm.beats(10_240, classified),
                new HeartRates(rate, hours, pauses.stream().reduce((a, b) -> b)),
                SampleRhythm.episodes(MadeSummary.pauses(pauses).list(), !classified.isEmpty()),
                variability,
                AnalysisSettings.DEFAULT,
                List.of("30 min were too noisy to measure."));
    }

    private static Hour hour(long from, long beats, Optional<Rate> rate) {
        return new Hour(minutes(from), minutes(40), beats, 60, 0, rate);
    }

    private static WaveformObject object(String uid, int number, String start) {
        return new WaveformObject(
                "2.25.1",
                "2.25.2",
                "1.2.840.10008.5.1.4.1.1.9.1.3",
                "2.25.3" + uid,
                number,
                Optional.of(Instant.parse(start)),
                60 * 60 * 200);
    }

    private static Duration minutes(long minutes) {
        return Duration.ofMinutes(minutes);
    }
}
