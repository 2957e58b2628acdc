package dev.isoline.ecg.analysis;

/**
 * Finds the R peak near the middle of a QRS complex: where the mains-free signal is farthest from
 * its mean around. A complex with two nearly equal peaks keeps to the polarity of those before.
 */
final class RPeak {

    private static final double REACH_SECONDS = 0.07;
    private static final double AROUND_SECONDS = 0.15;
    private static final double CLEARLY_LARGER = 1.5;

    private final LeadSignal signal;
    private final int smooth;
    private final int reach;
    private final int around;
    private int polarity;

    RPeak(LeadSignal signal, Pace pace) {
        this.signal = signal;
        smooth = pace.samples(0.020);
        reach = pace.samples(REACH_SECONDS);
        around = 2 * pace.samples(AROUND_SECONDS) + 1;
    }

    long near(long centre) {
        long mean = signal.smooth(centre, smooth, around) / around;
        long highest = centre;
        long lowest = centre;
        long high = Long.MIN_VALUE;
        long low = Long.MAX_VALUE;
        for (long i = centre - reach; i <= centre + reach; i++) {
            long value = signal.smooth(i, smooth, 1);
            if (value > high) {
                high = value;
                highest = i;
            }
            if (value < low) {
                low = value;
                lowest = i;
            }
        }
        return isUpward(high - mean, mean - low) ? highest : lowest;
    }

    private boolean isUpward(long up, long down) {
        boolean upward =
                up * (polarity < 0 ? 1 : CLEARLY_LARGER)
                        >= down * (polarity > 0 ? 1 : CLEARLY_LARGER);
        polarity += polarity == 0 || Math.abs(polarity) < 8 ? upward ? 1 : -1 : 0;
        return upward;
    }
}
