package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Block;

/**
 * One second of a lead in 25 slices of 40 ms: of each the lowest and highest sample, the mean, and
 * the roughness. A slice that a QRS complex lies in differs from most; a low or middle value of all
 * slices shows what lies between the complexes.
 */
final class SliceMeasures {

    static final int A_SECOND = 25;

    /** Where the second difference, 2 x(t) - x(t - d) - x(t + d), is strongest. */
    private static final double ROUGHEST_HZ = 60;

    private final double hz;
    private final int lag;
    private final int[] lowest = new int[A_SECOND];
    private final int[] highest = new int[A_SECOND];
    private final int[] mean = new int[A_SECOND];
    private final int[] rough = new int[A_SECOND];

    SliceMeasures(double hz) {
        this.hz = hz;
        lag = (int) Math.max(1, Math.round(hz / (2 * ROUGHEST_HZ)));
    }

    /**
     * Measures a slice: the samples of the second from one up to, and without, another. Roughness
     * is right of samples under 2^29.
     */
    void measure(int slice, int[] second, int begin, int end) {
        int low = Integer.MAX_VALUE;
        int high = Integer.MIN_VALUE;
        long sum = 0;
        long squares = 0;
        int from = Math.max(begin, 2 * lag);
        for (int i = begin; i < Math.min(from, end); i++) { // nothing before to differ from
            low = Math.min(low, second[i]);
            high = Math.max(high, second[i]);
            sum += second[i];
        }
        for (int i = from; i < end; i++) {
            int x = second[i];
            low = Math.min(low, x);
            high = Math.max(high, x);
            sum += x;
            int d = 2 * second[i - lag] - second[i - 2 * lag] - x;
            squares += (long) d * d;
        }
        lowest[slice] = low;
        highest[slice] = high;
        mean[slice] = (int) (sum / (end - begin));
        rough[slice] = Float.floatToRawIntBits((float) squares / Math.max(1, end - from));
    }

    int lowest(int slice) {
        return lowest[slice];
    }

    int highest(int slice) {
        return highest[slice];
    }

    /** Whether no sample of the second is missing. */
    boolean isWhole() {
        boolean whole = true;
        for (int low : lowest) {
            whole &= low != Block.MISSING;
        }
        return whole;
    }

    /** Of the slices' means, the middle. */
    int baseline() {
        return Five.medianOf25(mean, Five::median);
    }

    /** Mean square of the second difference in a quiet slice. */
    double roughness() {
        return Float.intBitsToFloat(Five.medianOf25(rough, Five::second));
    }

    /** The same of samples that something was taken off. */
    double roughness(double[] cleaned, LeadSecond second) {
        for (int slice = 0; slice < A_SECOND; slice++) {
            int from = Math.max(second.slice(slice), 2 * lag);
            int to = second.slice(slice + 1);
            double squares = 0;
            for (int i = from; i < to; i++) {
                double d = 2 * cleaned[i - lag] - cleaned[i - 2 * lag] - cleaned[i];
                squares += d * d;
            }
            rough[slice] = Float.floatToRawIntBits((float) squares / Math.max(1, to - from));
        }
        return roughness();
    }

    /** How much a sine of amplitude 1 adds to {@link #roughness()}. */
    double roughness(double frequency) {
        return 8 * Math.pow(Math.sin(Math.PI * frequency * lag / hz), 4);
    }

    /** Largest difference of two samples within four slices, the time of a QRS complex. */
    long swing() {
        long most = 0;
        for (int i = 3; i < A_SECOND; i++) {
            int low = Math.min(lowest[i], lowest[i - 1]);
            int high = Math.max(highest[i], highest[i - 1]);
            low = Math.min(low, Math.min(lowest[i - 2], lowest[i - 3]));
            high = Math.max(high, Math.max(highest[i - 2], highest[i - 3]));
            most = Math.max(most, (long) high - low);
        }
        return most;
    }

    /** Difference of the highest and the lowest sample of a slice and the one before. */
    long rise(int slice) {
        int before = Math.max(0, slice - 1);
        long high = Math.max(highest[slice], highest[before]);
        return high - Math.min(lowest[slice], lowest[before]);
    }

    /** Difference of the highest and the lowest sample. */
    long range() {
        int low = Integer.MAX_VALUE;
        int high = Integer.MIN_VALUE;
        for (int i = 0; i < A_SECOND; i++) {
            low = Math.min(low, lowest[i]);
            high = Math.max(high, highest[i]);
        }
        return (long) high - low;
    }
}
