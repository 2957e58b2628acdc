package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Beat;
import java.util.Arrays;
import java.util.Optional;

/**
 * Which intervals are normal to normal. With classified beats: between two successive beats of
 * class N. Without: 300 to 2000 ms long and within 20 % of the median of the five intervals around
 * it, so that an ectopic beat takes its neighbours with it (common practice, no source).
 */
final class NormalIntervals {

    static final String RULE =
            "Nobody classified the beats: heart rate variability leaves out intervals outside 300 to"
                    + " 2000 ms or more than 20 % off the median of the five around them.";

    private static final int AROUND = 2;
    private static final double SHORTEST = 300;
    private static final double LONGEST = 2000;
    private static final double OFF = 0.2;

    private final Intervals intervals;
    private final boolean classified;

    NormalIntervals(Intervals intervals, boolean classified) {
        this.intervals = intervals;
        this.classified = classified;
    }

    Optional<Summary.Variability> variability() {
        var variability = new HeartRateVariability();
        for (int i = 0; i < intervals.count(); i++) {
            variability.add(isNormal(i) ? intervals.milliseconds(i) : Intervals.NONE);
        }
        return variability.measures();
    }

    private boolean isNormal(int i) {
        return classified
                ? intervals.kind(i) == Beat.Kind.N && intervals.kind(i + 1) == Beat.Kind.N
                : looksNormal(i);
    }

    private boolean looksNormal(int i) {
        double length = intervals.milliseconds(i);
        double median = medianAround(i);
        return length >= SHORTEST && length <= LONGEST && Math.abs(length - median) <= OFF * median;
    }

    private double medianAround(int i) {
        int from = Math.max(0, Math.min(i - AROUND, intervals.count() - 2 * AROUND - 1));
        int to = Math.min(intervals.count(), from + 2 * AROUND + 1);
        var around = new double[to - from];
        int count = 0;
        for (int j = from; j < to; j++) {
            double length = intervals.milliseconds(j);
            if (!Double.isNaN(length)) {
                around[count++] = length;
            }
        }
        Arrays.sort(around, 0, count);
        return count == 0 ? Double.NaN : around[count / 2];
    }
}
