package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Block;
import java.util.Arrays;

/**
 * The last seconds of one lead, smoothed by two moving sums of any lengths wherever they are asked
 * for: the samples are summed twice as they come, and a moving sum of a moving sum is four reads of
 * that double sum. Whole numbers that wrap around: exact however long the recording runs.
 */
final class LeadSignal {

    private final long[] ring;
    private final int mask;
    private long first;
    private long end;
    private long sum;
    private long doubleSum;
    private int base;
    private int held;

    /** Remembers at least so many samples. */
    LeadSignal(int length) {
        ring = new long[Integer.highestOneBit(length - 1) * 2];
        mask = ring.length - 1;
    }

    /** Forgets what came before a gap. */
    void begin(long position) {
        Arrays.fill(ring, 0);
        first = position;
        end = position;
        sum = 0;
        doubleSum = 0;
    }

    /** Takes the next samples; a missing one is the one before. */
    void take(int[] samples, int from, int to) {
        if (end == first && from < to) {
            held = samples[from] == Block.MISSING ? held : samples[from];
            base = held;
        }
        int value = held;
        long once = sum;
        long twice = doubleSum;
        for (int i = from; i < to; i++) {
            value = samples[i] == Block.MISSING ? value : samples[i];
            once += value - base;
            twice += once;
            ring[(int) end++ & mask] = twice;
        }
        held = value;
        sum = once;
        doubleSum = twice;
    }

    /** Holds the last value for so many samples more, where the recording ends or pauses. */
    void hold(int count) {
        for (int i = 0; i < count; i++) {
            sum += held - base;
            doubleSum += sum;
            ring[(int) end++ & mask] = doubleSum;
        }
    }

    /** Position after the last sample. */
    long end() {
        return end;
    }

    /**
     * Sum of {@code b} successive sums of {@code a} samples, its middle at a position (rounded up
     * to half a sample); what was not recorded counts as nothing.
     */
    long smooth(long position, int a, int b) {
        long last = position + (a + b - 1) / 2;
        return at(last) - at(last - a) - at(last - b) + at(last - a - b);
    }

    private long at(long position) {
        return position < first ? 0 : ring[(int) position & mask];
    }
}
