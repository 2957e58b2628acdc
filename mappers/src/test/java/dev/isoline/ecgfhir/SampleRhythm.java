package dev.isoline.ecgfhir;

import static dev.isoline.ecg.summary.EpisodeKind.*;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.summary.BeatCounts;
import dev.isoline.ecg.summary.Disturbance;
import dev.isoline.ecg.summary.Ectopy;
import dev.isoline.ecg.summary.Ectopy.MostInHour;
import dev.isoline.ecg.summary.Ectopy.Pattern;
import dev.isoline.ecg.summary.Episode;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.Episodes;
import dev.isoline.ecg.summary.Episodes.Burden;
import dev.isoline.ecg.summary.LeadReport;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Ectopy, episodes and leads of the sample report, put together by hand. */
final class SampleRhythm {

    static final Episode FIBRILLATION =
            episode(ATRIAL_FIBRILLATION, 3_600, 600_000, 1_200, 119.8, 78, 163);
    static final Episode TACHYCARDIA =
            episode(NONSUSTAINED_VENTRICULAR_TACHYCARDIA, 2_400, 1_900, 5, 126.4, 118, 141);
    static final Episode IDIOVENTRICULAR =
            episode(ACCELERATED_IDIOVENTRICULAR_RHYTHM, 8_000, 4_000, 6, 75.2, 70, 81);

    /** Of two hours; the triplet is its only run of three. */
    static final Ectopy VENTRICULAR =
            new Ectopy(
                    240,
                    2.34375,
                    Optional.of(120.0),
                    Optional.of(new MostInHour(Duration.ofHours(1), 201)),
                    12,
                    1,
                    3,
                    14,
                    Optional.of(IDIOVENTRICULAR),
                    Optional.of(TACHYCARDIA),
                    new Pattern(2, 17),
                    new Pattern(1, 4));

    static final Ectopy NONE =
            new Ectopy(
                    0,
                    0,
                    Optional.of(0.0),
                    Optional.empty(),
                    0,
                    0,
                    0,
                    0,
                    Optional.empty(),
                    Optional.empty(),
                    new Pattern(0, 0),
                    new Pattern(0, 0));

    static final LeadReport LEAD =
            new LeadReport(
                    "MLII",
                    Duration.ofMinutes(150),
                    Duration.ofSeconds(7_230),
                    Map.of(
                            Disturbance.LEAD_OFF, Duration.ofSeconds(90),
                            Disturbance.MUSCLE, Duration.ofSeconds(1_500)),
                    Optional.of(1_149.6),
                    List.of());

    private SampleRhythm() {}

    static BeatCounts beats(long total, Map<Beat.Kind, Long> classified) {
        return classified.isEmpty()
                ? new BeatCounts(total, classified, Optional.empty(), Optional.empty())
                : new BeatCounts(total, classified, Optional.of(VENTRICULAR), Optional.of(NONE));
    }

    /** Looked for: pauses, bradycardia and tachycardia always, the rest in classified beats. */
    static Episodes episodes(List<Episode> pauses, boolean classified) {
        var list = new ArrayList<>(pauses);
        var burdens = new EnumMap<EpisodeKind, Burden>(EpisodeKind.class);
        List.of(PAUSE, BRADYCARDIA, EpisodeKind.TACHYCARDIA, ATRIAL_FIBRILLATION)
                .forEach(kind -> burdens.put(kind, Burden.NONE));
        if (classified) {
            list.addAll(List.of(FIBRILLATION, TACHYCARDIA, IDIOVENTRICULAR));
            List.of(EpisodeKind.values()).forEach(kind -> burdens.put(kind, Burden.NONE));
        }
        list.sort(Comparator.comparing(Episode::start));
        list.forEach(episode -> burdens.merge(episode.kind(), burden(episode), SampleRhythm::sum));
        return new Episodes(List.copyOf(list), burdens);
    }

    private static Burden burden(Episode e) {
        return new Burden(1, e.beats(), e.duration(), e.duration().toMillis() / 72_000.0);
    }

    private static Burden sum(Burden a, Burden b) {
        return new Burden(
                a.episodes() + b.episodes(),
                a.beats() + b.beats(),
                a.time().plus(b.time()),
                a.percent() + b.percent());
    }

    private static Episode episode(
            EpisodeKind kind,
            long seconds,
            long millis,
            long beats,
            double mean,
            double min,
            double max) {
        return new Episode(
                kind,
                Duration.ofSeconds(seconds),
                Duration.ofMillis(millis),
                beats,
                Optional.of(new Episode.Rates(mean, min, max)));
    }
}
