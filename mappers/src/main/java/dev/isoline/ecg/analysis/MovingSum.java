package dev.isoline.ecg.analysis;

/** Sum of the last values of a stream, in whole numbers: exact however long it runs. */
final class MovingSum {

    private final long[] ring;
    private int at;
    private long sum;

    MovingSum(int length) {
        ring = new long[length];
    }

    long add(long value) {
        sum += value - ring[at];
        ring[at] = value;
        at = at + 1 == ring.length ? 0 : at + 1;
        return sum;
    }

    int length() {
        return ring.length;
    }
}
