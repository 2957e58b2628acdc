package dev.isoline.ecg.rhythm;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.RankedValue;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Threshold;
import dev.isoline.ecg.summary.Variability;

/**
 * Which intervals are normal to normal: those between two successive beats of class N. Where no
 * person marked the beats, the interval also has to be of a likely length and near the median of
 * the five intervals around it, so that a beat found wrongly takes its neighbours with it (common
 * practice, no source).
 */
final class NormalIntervals {

    private static final int AROUND = 2;

    private final Intervals intervals;
    private final BeatTrack.Origin origin;
    private final AnalysisSettings settings;
    private final double shortest;
    private final double longest;
    private final double off;
    private final double[] around = new double[2 * AROUND + 1];

    NormalIntervals(Intervals intervals, BeatTrack.Origin origin, AnalysisSettings settings) {
        this.intervals = intervals;
        this.origin = origin;
        this.settings = settings;
        shortest = settings.value(Threshold.NN_SHORTEST);
        longest = settings.value(Threshold.NN_LONGEST);
        off = settings.value(Threshold.NN_OFF) / 100;
    }

    Variability variability() {
        var variability = new HeartRateVariability(settings);
        for (int i = 0; i < intervals.count(); i++) {
            double nn = isNormal(i) ? intervals.milliseconds(i) : Intervals.NONE;
            variability.add(intervals.seconds(i), nn);
        }
        return variability.measures();
    }

    private boolean isNormal(int i) {
        return switch (origin) {
            case REFERENCE -> isBetweenNormalBeats(i);
            case PROGRAM -> isBetweenNormalBeats(i) && looksNormal(i);
            case NOBODY -> looksNormal(i);
        };
    }

    private boolean isBetweenNormalBeats(int i) {
        return intervals.kind(i) == Beat.Kind.N && intervals.kind(i + 1) == Beat.Kind.N;
    }

    private boolean looksNormal(int i) {
        double length = intervals.milliseconds(i);
        double median = medianAround(i);
        return length >= shortest && length <= longest && Math.abs(length - median) <= off * median;
    }

    private double medianAround(int i) {
        int from = Math.max(0, Math.min(i - AROUND, intervals.count() - around.length));
        int to = Math.min(intervals.count(), from + around.length);
        int count = 0;
        for (int j = from; j < to; j++) {
            double length = intervals.milliseconds(j);
            if (!Double.isNaN(length)) {
                around[count++] = length;
            }
        }
        return count == 0 ? Double.NaN : RankedValue.middle(around, count);
    }
}
