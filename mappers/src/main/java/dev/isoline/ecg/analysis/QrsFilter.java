package dev.isoline.ecg.analysis;

import java.util.Arrays;

/**
 * Turns one lead into a signal that is high in a QRS complex and low elsewhere: band-pass of about
 * 8 to 16 Hz, slope, absolute value, mean of 80 ms (the scheme of Pan and Tompkins 1985 with the
 * absolute value in place of the square, so that heights follow the amplitude). The low-pass is a
 * moving sum of 20 ms and one of 16.7 ms, with their zeros at the mains frequencies 50 and 60 Hz;
 * behind it about 125 values a second are enough. Linear phase: every value belongs to the middle
 * of what it was made from.
 */
final class QrsFilter {

    static final double REMEMBERED_SECONDS = 16;
    private static final int SPARSE = 10;

    private final LeadSignal signal;
    private final int step;
    private final int mains50;
    private final int mains60;
    private final int baseline;
    private final int energy;
    private final long[] low;
    private final long[] slope;
    private final long[] height;
    private final int mask;
    private long origin;
    private long lowEnd;
    private long lowSum;
    private long slopeSum;
    private long before;

    QrsFilter(LeadSignal signal, Pace pace) {
        this.signal = signal;
        step = pace.step();
        mains50 = pace.samples(0.020);
        mains60 = pace.samples(1 / 60.0);
        baseline = pace.steps(0.125) | 1;
        energy = pace.steps(0.080) | 1;
        int length = Integer.highestOneBit(pace.steps(REMEMBERED_SECONDS)) * 2;
        mask = length - 1;
        low = new long[length];
        slope = new long[length];
        height = new long[length];
    }

    /** Starts anew; step 0 is at a position. */
    void begin(long position) {
        Arrays.fill(low, 0);
        Arrays.fill(slope, 0);
        Arrays.fill(height, 0);
        origin = position;
        lowEnd = 0;
        lowSum = 0;
        slopeSum = 0;
        before = 0;
    }

    /** Steps from a step to its height. */
    int delay() {
        return baseline / 2 + energy / 2;
    }

    /** Samples a step needs to be recorded after it. */
    int reach() {
        return (mains50 + mains60) / 2;
    }

    /** Filters up to a step, itself left out. */
    void advance(long until) {
        for (; lowEnd < until; lowEnd++) {
            long value = signal.smooth(origin + lowEnd * step, mains50, mains60);
            low[(int) lowEnd & mask] = value;
            lowSum += value - low[(int) (lowEnd - baseline) & mask];
            long high = low[(int) (lowEnd - baseline / 2) & mask] * baseline - lowSum;
            long steep = Math.abs(high - before);
            before = high;
            int at = (int) (lowEnd - baseline / 2) & mask;
            slope[at] = steep;
            slopeSum += steep - slope[at - energy & mask];
            height[at - energy / 2 & mask] = slopeSum;
        }
    }

    /** Position after the last height. */
    long end() {
        return lowEnd - delay();
    }

    long height(long at) {
        return at < 0 ? 0 : height[(int) at & mask];
    }

    /** Highest within {@code reach} steps of a step. */
    long highest(long at, int reach) {
        long highest = 0;
        for (long i = at - reach; i <= at + reach; i++) {
            highest = Math.max(highest, height(i));
        }
        return highest;
    }

    /** Every tenth height within {@code reach} steps of a step: they change no faster. */
    double[] around(long at, int reach) {
        long from = Math.max(0, at - reach);
        long to = Math.min(end(), at + reach);
        var some = new double[(int) Math.max(1, (to - from) / SPARSE)];
        for (int i = 0; i < some.length; i++) {
            some[i] = height(from + SPARSE * i);
        }
        return some;
    }

    /** Largest slope, band-passed, within {@code reach} steps of a step. */
    long steepest(long at, int reach) {
        long steepest = 0;
        for (long i = Math.max(0, at - reach); i <= at + reach; i++) {
            steepest = Math.max(steepest, slope[(int) i & mask]);
        }
        return steepest;
    }

    /**
     * How far the smaller of rise and fall, low-passed, is behind the larger one, 0 to 1; near 0 a
     * step of the baseline.
     */
    double balance(long at, int reach) {
        long rise = 0;
        long fall = 0;
        for (long i = Math.max(1, at - reach); i <= at + reach; i++) {
            long change = low[(int) i & mask] - low[(int) (i - 1) & mask];
            rise = Math.max(rise, change);
            fall = Math.max(fall, -change);
        }
        return (double) Math.min(rise, fall) / Math.max(1, Math.max(rise, fall));
    }
}
