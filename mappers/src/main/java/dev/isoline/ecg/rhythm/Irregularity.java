package dev.isoline.ecg.rhythm;

import dev.isoline.ecg.RankedValue;
import java.util.Arrays;

/**
 * How irregular a series of intervals is at each of them, after the detector of Petrenas, Marozas
 * and Sornmo (Comput Biol Med 2015;65:184-191; its constants from memory). Within eight intervals,
 * freed of single early or late beats by a median of three, the share of pairs that differ by more
 * than 30 ms, over the mean interval; nothing where the median filter leaves the sum of the eight
 * unchanged, as in a steady or an alternating rhythm.
 *
 * <p>Own choices: the share is smoothed faster than the paper does it, so that a minute is seen; an
 * interval over a second counts as one, so that slow fibrillation is; and of 61 intervals around,
 * 45 % have to lie more than 5 % off their median, which a rhythm with scattered early beats or
 * false ones does not reach.
 */
final class Irregularity {

    private static final int WINDOW = 8;
    private static final double UNLIKE = 0.03;
    private static final double SMOOTHING = 0.02;
    private static final double STEADY = 2e-4;
    private static final double SHARE_SMOOTHING = 0.03;
    private static final double SLOWEST = 1;
    private static final int AROUND = 30;
    private static final double OFF = 0.05;
    private static final double SCATTERED = 0.45;

    private final double[] rr;
    private final double[] median;

    /**
     * @param rr seconds, without a break, the intervals of ventricular beats left out
     */
    Irregularity(double[] rr) {
        this.rr = rr;
        median = new double[rr.length];
        for (int i = 0; i < rr.length; i++) {
            median[i] = median(rr[Math.max(0, i - 1)], rr[i], rr[Math.min(rr.length - 1, i + 1)]);
        }
    }

    private static double median(double a, double b, double c) {
        return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
    }

    /** Whether the measure is over a limit, for each interval. */
    boolean[] isOver(double limit) {
        var values = values();
        var over = new boolean[rr.length];
        for (int i = 0; i < rr.length; i++) {
            over[i] = values[i] > limit && isScattered(i);
        }
        return over;
    }

    /** Fibrillation is around 1, a steady rhythm near 0. */
    private double[] values() {
        var unlike = new double[rr.length];
        var changed = new double[rr.length];
        if (rr.length >= WINDOW) {
            for (int i = 0; i < rr.length; i++) {
                int from = Math.max(0, Math.min(rr.length - WINDOW, i - WINDOW / 2));
                unlike[i] = unlikePairs(from);
                changed[i] = changedByMedian(from);
            }
        }
        smooth(unlike, SHARE_SMOOTHING);
        smooth(changed, SMOOTHING);
        var trend = median.clone();
        smooth(trend, SMOOTHING);
        Arrays.setAll(
                unlike, i -> changed[i] <= STEADY ? 0 : unlike[i] / Math.min(trend[i], SLOWEST));
        return unlike;
    }

    private boolean isScattered(int i) {
        int from = Math.max(0, Math.min(rr.length - 2 * AROUND - 1, i - AROUND));
        var around = Arrays.copyOfRange(rr, from, Math.min(rr.length, from + 2 * AROUND + 1));
        double middle = RankedValue.middle(around, around.length);
        int off = 0;
        for (double interval : around) {
            off += Math.abs(interval - middle) > OFF * middle ? 1 : 0;
        }
        return off > SCATTERED * around.length;
    }

    /** Of all pairs in the window, 0 to 1. */
    private double unlikePairs(int from) {
        int pairs = 0;
        for (int i = from; i < from + WINDOW; i++) {
            for (int j = from; j < i; j++) {
                pairs += Math.abs(median[i] - median[j]) > UNLIKE ? 1 : 0;
            }
        }
        return 2.0 * pairs / (WINDOW * (WINDOW - 1));
    }

    private double changedByMedian(int from) {
        double raw = 0;
        double filtered = 0;
        for (int i = from; i < from + WINDOW; i++) {
            raw += rr[i];
            filtered += median[i];
        }
        double change = filtered / raw - 1;
        return change * change;
    }

    /** Exponential mean forward, then backward, so that nothing is late. */
    private static void smooth(double[] values, double share) {
        for (int i = 1; i < values.length; i++) {
            values[i] = values[i - 1] + share * (values[i] - values[i - 1]);
        }
        for (int i = values.length - 2; i >= 0; i--) {
            values[i] = values[i + 1] + share * (values[i] - values[i + 1]);
        }
    }
}
