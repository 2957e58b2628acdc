package dev.isoline.ecg.rhythm;

/**
 * NN intervals counted in bins of 1/128 s, the first beginning at zero: the scale on which the
 * triangular index is measured for comparison (Task Force 1996, section on geometric methods).
 */
final class IntervalHistogram {

    private static final double BINS_PER_MILLISECOND = 0.128;
    private static final int BINS = 128 * 60;

    /** An interval on the edge of two bins is in the upper one, however it was rounded. */
    private static final double EDGE = 1e-9;

    private final long[] bins = new long[BINS];
    private long count;
    private long highest;

    void add(double nn) {
        int bin = (int) Math.min(BINS - 1, (nn * BINS_PER_MILLISECOND + EDGE));
        highest = Math.max(highest, ++bins[bin]);
        count++;
    }

    /** Number of intervals over the height of the histogram. */
    double triangularIndex() {
        return (double) count / highest;
    }
}
