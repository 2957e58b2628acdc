package dev.isoline.ecg.rhythm;

import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Measure;
import dev.isoline.ecg.summary.Threshold;

/**
 * SDANN and SDNN index: NN intervals by segments of five minutes, counted from the start of the
 * recording (Task Force 1996, table 1). A segment counts when its NN intervals cover enough of it.
 */
final class SegmentSpread {

    private final double length;
    private final double shortest;
    private final Spread means = new Spread();
    private double deviations;
    private long segment;
    private Spread inside = new Spread();

    SegmentSpread(AnalysisSettings settings) {
        length = settings.value(Threshold.HRV_SEGMENT);
        shortest = length * settings.value(Threshold.HRV_SEGMENT_SHARE) / 100;
    }

    /** An interval belongs to the segment it begins in. */
    void add(double at, double nn) {
        long next = (long) (at / length);
        if (next != segment) {
            close();
            segment = next;
        }
        inside.add(nn);
    }

    private void close() {
        double covered = inside.count() * inside.mean() / 1000;
        if (inside.count() > 1 && covered >= shortest) {
            means.add(inside.mean());
            deviations += inside.deviation();
        }
        inside = new Spread();
    }

    /** After the last interval. */
    Measure sdann() {
        close();
        return means.count() > 1 ? Measure.of(means.deviation()) : refused(2);
    }

    /** After the last interval. */
    Measure sdnnIndex() {
        close();
        return means.count() > 0 ? Measure.of(deviations / means.count()) : refused(1);
    }

    private Measure refused(int needed) {
        return Measure.refused(
                String.format(
                        "%d segments of %d s hold enough normal-to-normal intervals; at least %d"
                                + " are needed.",
                        means.count(), Math.round(length), needed));
    }
}
