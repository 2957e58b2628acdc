package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Block;
import dev.isoline.ecg.summary.Disturbance;

/**
 * Finds where a lead holds one value: no samples or the end of its range for 0.2 s, anything for 5
 * s. The end of its range is the lead's own extreme, more than 1 mV from its baseline. Times: own
 * choice, no source; seen in slices of 40 ms.
 */
final class HeldValue {

    private static final double SHORT_SECONDS = 0.16;
    private static final double LONG_SECONDS = 5;
    private static final double AWAY_MICROVOLTS = 1000;
    private static final double BASELINE_SECONDS = 10;

    private final double hz;
    private final double away;
    private final QualityMarks marks;
    private int lowest = Integer.MAX_VALUE;
    private int highest = Integer.MIN_VALUE;
    private double baseline = Double.NaN;
    private int value;
    private long from = -1;
    private long unmarked;
    private boolean isLong;

    /**
     * @param microvolts of a sample's unit
     */
    HeldValue(double hz, double microvolts, QualityMarks marks) {
        this.hz = hz;
        this.away = AWAY_MICROVOLTS / microvolts;
        this.marks = marks;
    }

    /** Takes the lowest and the highest sample of the next slice. */
    void take(long begin, long end, int low, int high) {
        if (low != high) {
            from = -1;
            learn(low, high);
            return;
        }
        if (from < 0 || low != value) {
            from = begin;
            unmarked = begin;
            isLong = false;
            value = low;
            learn(low, high);
        }
        if (end - from >= SHORT_SECONDS * hz) {
            held(end);
        }
    }

    private void learn(int low, int high) {
        if (low != Block.MISSING) {
            lowest = Math.min(lowest, low);
            highest = Math.max(highest, high);
        }
    }

    /** Marks the whole run once, then what it grows by. */
    private void held(long end) {
        if (!isLong && end - from >= LONG_SECONDS * hz) {
            isLong = true;
            unmarked = from;
        }
        if (isLong || value == Block.MISSING) {
            mark(Disturbance.LEAD_OFF, end);
        } else if (isEndOfRange(value)) {
            mark(Disturbance.SATURATED, end);
        }
    }

    private void mark(Disturbance kind, long end) {
        marks.unusable(kind, (int) (unmarked / hz), (int) ((end - 1) / hz));
        unmarked = end - 1;
    }

    boolean isEndOfRange(int sample) {
        return (sample == lowest || sample == highest) && Math.abs(sample - baseline) > away;
    }

    /** Takes the baseline of a second in which nothing is wrong. */
    void baseline(double next) {
        baseline = Double.isNaN(baseline) ? next : baseline + (next - baseline) / BASELINE_SECONDS;
    }

    /** Nothing is held across a gap. */
    void interrupt() {
        from = -1;
    }
}
