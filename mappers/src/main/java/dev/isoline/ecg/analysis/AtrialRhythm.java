package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Beat.Kind;
import dev.isoline.ecg.RankedValue;

/**
 * Finds supraventricular ectopic beats among those that are not ventricular: a beat earlier than
 * the basic rhythm by more than that rhythm changes, and those after it until the basic rhythm is
 * back. In atrial fibrillation intervals change so much that earliness says nothing and none is
 * marked.
 */
final class AtrialRhythm {

    /** Of the basic interval, the first beat of a run. */
    private static final double EARLY = 0.85;

    /** Of the basic interval, the other beats of a run. */
    private static final double BACK = 0.9;

    /** Of the interval before: it has become longer at once, the run is over. */
    private static final double LONGER = 1.25;

    /** A beat is early by more than so many times the usual change between intervals. */
    private static final double CHANGES = 4;

    /** A run is no longer: what lasts is a new basic rhythm. */
    private static final int LONGEST_RUN = 200;

    /** Longer than the basic interval, it is a pause. */
    private static final double PAUSE = 1.5;

    private final BeatRhythm rhythm;
    private final Kind[] kinds;
    private final boolean pausing;
    private final Median basic;
    private boolean known;
    private int run;

    AtrialRhythm(BeatShapes shapes, BeatRhythm rhythm, Kind[] kinds, Pace pace) {
        this.rhythm = rhythm;
        this.kinds = kinds;
        var pauses = new PausedRhythm(rhythm, kinds);
        pausing = pauses.areFrequent() && new PWaves(shapes, pace).differ(pauses);
        known = pausing;
        basic = new Median(pausing ? pauses.median() : 0);
    }

    /** Marks S among the beats that are N. */
    void mark() {
        for (int i = 1; i < kinds.length; i++) {
            if (kinds[i] == Kind.N && kinds[i - 1] != Kind.V && !Double.isNaN(rhythm.interval(i))) {
                kinds[i] = kind(i);
            } else if (kinds[i] != Kind.V) {
                run = 0;
            }
        }
    }

    private Kind kind(int beat) {
        if (known && run < LONGEST_RUN && (run > 0 ? goesOn(beat) : begins(beat))) {
            run++;
            return Kind.S;
        }
        learn(rhythm.interval(beat));
        run = 0;
        return Kind.N;
    }

    private void learn(double interval) {
        if (!known || run >= LONGEST_RUN) {
            basic.fill(interval);
            known = true;
        } else if (pausing || interval < PAUSE * basic.value()) {
            basic.add(interval);
        }
    }

    private boolean goesOn(int beat) {
        double interval = rhythm.interval(beat);
        return interval < BACK * basic.value()
                && (pausing || interval < LONGER * rhythm.interval(beat - 1));
    }

    private boolean begins(int beat) {
        double interval = rhythm.interval(beat);
        if (interval >= EARLY * basic.value()) {
            return false;
        }
        double early = Math.min(EARLY, 1 - CHANGES * change(beat));
        return pausing
                || interval < early * basic.value()
                        && !(interval >= early * rhythm.interval(beat - 1));
    }

    /** Median change between successive intervals around a beat, over the usual interval there. */
    private double change(int beat) {
        var changes = new double[2 * BeatRhythm.AROUND + 1];
        int count = 0;
        int to = Math.min(kinds.length - 1, beat + BeatRhythm.AROUND);
        for (int i = Math.max(2, beat - BeatRhythm.AROUND); i <= to; i++) {
            double change = Math.abs(rhythm.interval(i) - rhythm.interval(i - 1));
            boolean ventricular =
                    kinds[i] == Kind.V || kinds[i - 1] == Kind.V || kinds[i - 2] == Kind.V;
            if (!ventricular && !Double.isNaN(change)) {
                changes[count++] = change;
            }
        }
        return count == 0 ? 0 : RankedValue.middle(changes, count) / rhythm.usual(beat);
    }
}
