package dev.isoline.ecg.analysis;

/**
 * Finds the R peak near the middle of a QRS complex: where the mains-free signal is farthest from
 * its mean around. A complex with two nearly equal peaks keeps to the polarity of those before.
 */
final class RPeak {

    private static final double REACH_SECONDS = 0.07;
    private static final double AROUND_SECONDS = 0.15;
    private static final double CLEARLY_LARGER = 1.5;

    private final QrsFilter filter;
    private final int reach;
    private final int around;
    private int polarity;

    RPeak(QrsFilter filter, double hz) {
        this.filter = filter;
        reach = QrsFilter.samples(hz, REACH_SECONDS);
        around = QrsFilter.samples(hz, AROUND_SECONDS);
    }

    long near(long centre) {
        long mean = mean(centre);
        long highest = centre;
        long lowest = centre;
        for (long i = Math.max(0, centre - reach); i <= centre + reach; i++) {
            highest = filter.smooth(i) > filter.smooth(highest) ? i : highest;
            lowest = filter.smooth(i) < filter.smooth(lowest) ? i : lowest;
        }
        long up = filter.smooth(highest) - mean;
        long down = mean - filter.smooth(lowest);
        boolean upward =
                up * (polarity < 0 ? 1 : CLEARLY_LARGER)
                        >= down * (polarity > 0 ? 1 : CLEARLY_LARGER);
        polarity += polarity == 0 || Math.abs(polarity) < 8 ? upward ? 1 : -1 : 0;
        return Math.max(0, upward ? highest : lowest);
    }

    private long mean(long centre) {
        long sum = 0;
        for (long i = centre - around; i <= centre + around; i++) {
            sum += filter.smooth(i);
        }
        return sum / (2L * around + 1);
    }
}
