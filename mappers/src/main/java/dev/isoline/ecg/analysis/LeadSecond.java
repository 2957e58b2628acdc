package dev.isoline.ecg.analysis;

/** The second of a lead that is being taken, on the grid of the recording's seconds. */
final class LeadSecond {

    private final double hz;
    private final int[] samples;
    private int number;
    private long begin;
    private int length;
    private int filled;
    private boolean full;

    LeadSecond(double hz) {
        this.hz = hz;
        samples = new int[(int) Math.ceil(hz) + 1];
        next(0);
    }

    /** Starts at a position, within a second or at its beginning. */
    void begin(long first) {
        next((int) (first / hz));
        filled = (int) (first - begin);
        full = filled == 0;
    }

    /** Goes on to the second after this one. */
    void next() {
        next(number + 1);
    }

    private void next(int number) {
        this.number = number;
        begin = (long) Math.ceil(number * hz);
        length = (int) ((long) Math.ceil((number + 1) * hz) - begin);
        filled = 0;
        full = true;
    }

    /** Takes what fits of the samples from one on; how many did. */
    int take(int[] taken, int from) {
        int count = Math.min(taken.length - from, length - filled);
        System.arraycopy(taken, from, samples, filled, count);
        filled += count;
        return count;
    }

    int number() {
        return number;
    }

    int[] samples() {
        return samples;
    }

    /** Number of samples of a full second that begins where this one does. */
    int length() {
        return length;
    }

    /** First sample of a slice, counted within the second. */
    int slice(int slice) {
        return slice * length / SliceMeasures.A_SECOND;
    }

    /** Slices whose samples are all taken, or lie before the position it began at. */
    int slicesTaken() {
        int count = (filled + 1) * SliceMeasures.A_SECOND / length;
        while (count > 0 && (count > SliceMeasures.A_SECOND || slice(count) > filled)) {
            count--;
        }
        return count;
    }

    /** Position on the recording's time axis of a sample within the second. */
    long position(int sample) {
        return begin + sample;
    }

    /** Position after the last sample taken. */
    long end() {
        return begin + filled;
    }

    boolean isOver() {
        return filled == length;
    }

    /** Whether it was taken from its first sample on. */
    boolean isFull() {
        return full;
    }
}
