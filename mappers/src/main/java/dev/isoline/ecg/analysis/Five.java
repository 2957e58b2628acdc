package dev.isoline.ecg.analysis;

/**
 * Order statistics of 25 numbers without sorting them: of each five a rank, of those five the
 * median (the remedian of Rousseeuw and Bassett, JASA 1990;85:97-104, from memory). The fives are
 * every fifth number, so that neighbours go into different ones.
 */
final class Five {

    private static final int STEP = 5;

    /** The rank taken of each five. */
    @FunctionalInterface
    interface Rank {
        int of(int a, int b, int c, int d, int e);
    }

    private Five() {}

    static int medianOf25(int[] x, Rank rank) {
        return median(
                five(x, 0, rank),
                five(x, 1, rank),
                five(x, 2, rank),
                five(x, 3, rank),
                five(x, 4, rank));
    }

    private static int five(int[] x, int at, Rank rank) {
        return rank.of(x[at], x[at + STEP], x[at + 2 * STEP], x[at + 3 * STEP], x[at + 4 * STEP]);
    }

    static int median(int a, int b, int c, int d, int e) {
        int low = Math.max(Math.min(a, b), Math.min(c, d));
        int high = Math.min(Math.max(a, b), Math.max(c, d));
        return Math.max(Math.min(low, high), Math.min(Math.max(low, high), e));
    }

    /** The smallest but one. */
    static int second(int a, int b, int c, int d, int e) {
        int one = Math.min(a, b);
        int other = Math.min(c, d);
        int next = Math.min(Math.max(one, other), Math.min(Math.max(a, b), Math.max(c, d)));
        return Math.max(Math.min(one, other), Math.min(next, e));
    }
}
