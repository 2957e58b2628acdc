package dev.isoline.ecg.rhythm;

import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Measure;
import dev.isoline.ecg.summary.Threshold;
import dev.isoline.ecg.summary.Variability;
import java.time.Duration;

/**
 * Time-domain measures over normal-to-normal intervals (Task Force ESC/NASPE, Eur Heart J
 * 1996;17:354-381, table 1). Differences are taken between two NN intervals that share a beat.
 */
final class HeartRateVariability {

    private static final double NN50 = 50;

    private final AnalysisSettings settings;
    private final Spread all = new Spread();
    private final SegmentSpread segments;
    private final IntervalHistogram histogram = new IntervalHistogram();
    private double sum;
    private long differences;
    private double squaredDifferences;
    private long over50;
    private double before = Intervals.NONE;

    HeartRateVariability(AnalysisSettings settings) {
        this.settings = settings;
        segments = new SegmentSpread(settings);
    }

    /**
     * The next interval.
     *
     * @param at seconds from the start of the recording to its first beat
     * @param nn milliseconds; {@link Intervals#NONE} when it is not normal to normal
     */
    void add(double at, double nn) {
        if (!Double.isNaN(nn)) {
            sum += nn;
            all.add(nn);
            segments.add(at, nn);
            histogram.add(nn);
            difference(nn - before);
        }
        before = nn;
    }

    private void difference(double difference) {
        if (!Double.isNaN(difference)) {
            differences++;
            squaredDifferences += difference * difference;
            over50 += Math.abs(difference) > NN50 ? 1 : 0;
        }
    }

    Variability measures() {
        return new Variability(
                all.count(),
                Duration.ofNanos(Math.round(sum * 1e6)),
                from(Threshold.HRV_SHORTEST, all.count() > 1, all.deviation()),
                segments.sdann(),
                segments.sdnnIndex(),
                from(
                        Threshold.HRV_SHORTEST,
                        differences > 0,
                        Math.sqrt(squaredDifferences / differences)),
                from(Threshold.HRV_SHORTEST, differences > 0, 100.0 * over50 / differences),
                from(Threshold.HRV_GEOMETRIC, all.count() > 0, histogram.triangularIndex()));
    }

    /** Refused when the NN intervals together are shorter than the threshold. */
    private Measure from(Threshold shortest, boolean defined, double value) {
        double needed = settings.value(shortest);
        if (defined && sum / 1000 >= needed) {
            return Measure.of(value);
        }
        return Measure.refused(
                "Normal-to-normal intervals of "
                        + Math.round(sum / 1000)
                        + " s in all; at least "
                        + Math.round(needed)
                        + " s are needed.");
    }
}
