package dev.isoline.ecg.rhythm;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Episode;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.Threshold;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/**
 * Atrial fibrillation: stretches of irregular intervals, long enough. The intervals before and
 * after a ventricular beat say nothing of the atria and are left out; the stretch runs on over
 * them. A break ends an episode, but not the evidence: parts with a short break between are judged
 * together. P waves are not looked at.
 */
final class AtrialFibrillation {

    /** Intervals judged at a time, and on either side more, which the smoothing forgets within. */
    private static final int PIECE = 20_000;

    private static final int MARGIN = 1_000;

    /** What lies on either side of a longer break may have nothing to do with each other. */
    private static final Duration JUDGED_TOGETHER = Duration.ofSeconds(10);

    private final Intervals intervals;
    private final AnalysisSettings settings;
    private final EpisodeLog log;
    private final double limit;
    private final BitSet irregular = new BitSet();

    private AtrialFibrillation(Intervals intervals, AnalysisSettings settings, EpisodeLog log) {
        this.intervals = intervals;
        this.settings = settings;
        this.log = log;
        limit = settings.value(Threshold.AF_IRREGULARITY);
    }

    static void find(Intervals intervals, AnalysisSettings settings, EpisodeLog log) {
        log.lookFor(EpisodeKind.ATRIAL_FIBRILLATION);
        var fibrillation = new AtrialFibrillation(intervals, settings, log);
        int from = 0;
        for (int i = 0; i <= intervals.count(); i++) {
            if (i == intervals.count() || fibrillation.isFarApart(i)) {
                fibrillation.together(from, i);
                from = i + 1;
            }
        }
    }

    private boolean isFarApart(int i) {
        return !intervals.isMeasurable(i)
                && intervals.between(i, i + 1).compareTo(JUDGED_TOGETHER) > 0;
    }

    /** Intervals from one on up to, and without, another, parted by short breaks at most. */
    private void together(int from, int to) {
        for (int piece = from; piece < to; piece += PIECE) {
            judge(piece, Math.min(to, piece + PIECE), from, to);
        }
        episodes(from, to);
    }

    private void judge(int from, int to, int earliest, int latest) {
        int[] kept = kept(Math.max(earliest, from - MARGIN), Math.min(latest, to + MARGIN));
        double[] rr =
                Arrays.stream(kept).mapToDouble(i -> intervals.milliseconds(i) / 1000).toArray();
        boolean[] over = new Irregularity(rr).isOver(limit);
        for (int i = 0; i < kept.length; i++) {
            if (kept[i] >= from && kept[i] < to && over[i]) {
                irregular.set(kept[i]);
            }
        }
    }

    private int[] kept(int from, int to) {
        var kept = new int[to - from];
        int count = 0;
        for (int i = from; i < to; i++) {
            if (intervals.isMeasurable(i) && !isVentricular(i)) {
                kept[count++] = i;
            }
        }
        return Arrays.copyOf(kept, count);
    }

    private boolean isVentricular(int i) {
        return intervals.kind(i) == Beat.Kind.V || intervals.kind(i + 1) == Beat.Kind.V;
    }

    private void episodes(int from, int to) {
        var parts = new ArrayList<Episode>();
        int first = -1;
        int last = -1;
        for (int i = from; i < to; i++) {
            boolean whole = intervals.isMeasurable(i);
            if (irregular.get(i)) {
                first = first < 0 ? i : first;
                last = i + 1;
            } else if (!whole || !isVentricular(i)) {
                part(first, last, parts);
                first = -1;
                close(whole, parts);
            }
        }
        part(first, last, parts);
        close(true, parts);
    }

    private void part(int first, int last, List<Episode> parts) {
        if (first >= 0) {
            int window = settings.count(Threshold.RATE_BEATS);
            parts.add(intervals.averaged(EpisodeKind.ATRIAL_FIBRILLATION, first, last, window));
        }
    }

    /** At its end takes the parts of one stretch, if they last long enough in all. */
    private void close(boolean end, List<Episode> parts) {
        if (!end) {
            return;
        }
        var all = parts.stream().map(Episode::duration).reduce(Duration.ZERO, Duration::plus);
        if (all.compareTo(settings.duration(Threshold.AF_DURATION)) >= 0) {
            parts.forEach(log::add);
        }
        parts.clear();
    }
}
