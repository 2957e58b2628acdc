package dev.isoline.ecg.rhythm;

/**
 * NN intervals counted in bins of 1/128 s, on which the triangular index of Task Force 1996 is
 * commonly measured ("approximately 8 ms": there, table 1 and section "Geometrical methods").
 */
final class IntervalHistogram {

    private static final double BINS_PER_MILLISECOND = 0.128;
    private static final int BINS = 128 * 60;

    private final long[] bins = new long[BINS];
    private long count;
    private long highest;

    void add(double nn) {
        int bin = (int) Math.min(BINS - 1, Math.round(nn * BINS_PER_MILLISECOND));
        highest = Math.max(highest, ++bins[bin]);
        count++;
    }

    /** Number of intervals over the height of the histogram. */
    double triangularIndex() {
        return (double) count / highest;
    }
}
