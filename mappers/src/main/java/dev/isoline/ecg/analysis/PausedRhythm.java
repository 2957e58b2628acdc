package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Beat.Kind;
import dev.isoline.ecg.RankedValue;

/**
 * Beats that end a pause between normal beats, and those in a steady rhythm. Where pauses are
 * frequent, either beats fail to come or the steady rhythm is a foreign one that stops again and
 * again; P waves tell which.
 */
final class PausedRhythm {

    private static final double PAUSE = 1.6;
    private static final double STEADY = 0.15;

    /** Of all beats. */
    private static final double FREQUENT = 0.05;

    private static final int LEAST = 20;

    private final boolean[] pause;
    private final boolean[] steady;
    private final double[] intervals;
    private int count;

    PausedRhythm(BeatRhythm rhythm, Kind[] kinds) {
        pause = new boolean[kinds.length];
        steady = new boolean[kinds.length];
        intervals = new double[kinds.length];
        for (int i = 2; i < kinds.length; i++) {
            boolean normal = kinds[i] == Kind.N && kinds[i - 1] == Kind.N && kinds[i - 2] == Kind.N;
            double ratio = normal ? rhythm.interval(i) / rhythm.interval(i - 1) : Double.NaN;
            steady[i] = Math.abs(ratio - 1) < STEADY;
            pause[i] = ratio > PAUSE;
            if (pause[i]) {
                intervals[count++] = rhythm.interval(i);
            }
        }
    }

    boolean areFrequent() {
        return count >= LEAST && count > FREQUENT * pause.length;
    }

    boolean ends(int beat) {
        return pause[beat];
    }

    boolean isSteady(int beat) {
        return steady[beat];
    }

    /** Of the pauses, in samples. */
    double median() {
        return RankedValue.middle(intervals, count);
    }
}
