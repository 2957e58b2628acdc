package dev.isoline.ecg.analysis;

/** The last values of a stream by their position in it. */
final class History {

    private final long[] ring;
    private final int mask;
    private long end;

    /** Remembers at least so many values. */
    History(int length) {
        ring = new long[Integer.highestOneBit(Math.max(2, length - 1)) * 2];
        mask = ring.length - 1;
    }

    void add(long value) {
        ring[(int) end++ & mask] = value;
    }

    /** Value at a position, 0 before the beginning; it must still be remembered. */
    long at(long position) {
        return position < 0 ? 0 : ring[(int) position & mask];
    }

    /** Position after the last value. */
    long end() {
        return end;
    }
}
