package dev.isoline.ecg.summary;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.summary.Episodes.Burden;
import dev.isoline.ecg.summary.HeartRates.Interval;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Parts of a summary put together by hand; nothing is measured. */
public final class MadeSummary {

    /** Of a recording too short for any measure. */
    public static final Variability TOO_SHORT =
            new Variability(
                    0,
                    Duration.ZERO,
                    refused(),
                    refused(),
                    refused(),
                    refused(),
                    refused(),
                    refused());

    private MadeSummary() {}

    private static Measure refused() {
        return Measure.refused("Too short.");
    }

    public static Variability variability(long intervals, double sdnn, double rmssd, double pnn50) {
        return new Variability(
                intervals,
                Duration.ofMillis(800 * intervals),
                Measure.of(sdnn),
                refused(),
                refused(),
                Measure.of(rmssd),
                Measure.of(pnn50),
                refused());
    }

    /** Each pause with the beats around it. */
    public static Episodes pauses(List<Interval> pauses) {
        var list =
                pauses.stream()
                        .map(
                                pause ->
                                        new Episode(
                                                EpisodeKind.PAUSE,
                                                pause.at(),
                                                pause.length(),
                                                2,
                                                Optional.empty()))
                        .toList();
        var time = list.stream().map(Episode::duration).reduce(Duration.ZERO, Duration::plus);
        var burden = new Burden(list.size(), 2L * list.size(), time, 1);
        return new Episodes(list, Map.of(EpisodeKind.PAUSE, burden));
    }

    public static BeatCounts beats(long total, Map<Beat.Kind, Long> classified) {
        return new BeatCounts(total, classified, Optional.empty(), Optional.empty());
    }
}
