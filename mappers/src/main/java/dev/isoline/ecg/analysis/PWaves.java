package dev.isoline.ecg.analysis;

import java.util.function.IntPredicate;

/** What comes before QRS complexes: whether beats that end a pause have another P wave. */
final class PWaves {

    private static final double FROM_SECONDS = 0.20;
    private static final double TO_SECONDS = 0.10;

    /** Before the R peak, between P wave and QRS complex. */
    private static final double LEVEL_SECONDS = 0.06;

    /** Of the height of the QRS complexes. */
    private static final double DIFFERENT = 0.04;

    private final BeatShapes shapes;
    private final int from;
    private final int to;
    private final int level;

    PWaves(BeatShapes shapes, Pace pace) {
        this.shapes = shapes;
        from = shapes.before() - pace.steps(FROM_SECONDS);
        to = shapes.before() - pace.steps(TO_SECONDS);
        level = shapes.before() - pace.steps(LEVEL_SECONDS);
    }

    /** Whether it differs on any lead from that of the beats in a steady rhythm. */
    boolean differ(PausedRhythm pauses) {
        for (int lead = 0; lead < shapes.leads(); lead++) {
            double ending = mean(lead, pauses::ends);
            if (Math.abs(ending - mean(lead, pauses::isSteady)) > DIFFERENT) {
                return true;
            }
        }
        return false;
    }

    private double mean(int lead, IntPredicate of) {
        double sum = 0;
        double weights = Double.MIN_NORMAL;
        for (int beat = 0; beat < shapes.count(); beat++) {
            if (of.test(beat)) {
                double weight = shapes.weight(beat)[lead];
                sum += weight * height(shapes.shape(beat), lead * shapes.length());
                weights += weight;
            }
        }
        return sum / weights;
    }

    private double height(float[] shape, int at) {
        double sum = 0;
        for (int i = from; i <= to; i++) {
            sum += shape[at + i] - shape[at + level];
        }
        return sum / (to - from + 1);
    }
}
