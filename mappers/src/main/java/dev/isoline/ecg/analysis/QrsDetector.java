package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Block;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.LongConsumer;

/** Finds the QRS complexes of one lead, sample by sample, remembering two seconds of it. */
final class QrsDetector {

    private static final double REFRACTORY_SECONDS = 0.2;
    private static final double LEARNING_SECONDS = 8;
    private static final double SLOPE_REACH_SECONDS = 0.08;

    /** Wide enough for the rise and the fall of a broad ventricular complex. */
    private static final double STEP_REACH_SECONDS = 0.16;

    private final double hz;
    private final LongConsumer beats;
    private final int refractory;
    private final List<Candidate> early = new ArrayList<>();
    private final double[] maxima = new double[(int) LEARNING_SECONDS];
    private QrsFilter filter;
    private RPeak rPeak;
    private QrsDecision decision;
    private long origin;
    private long count;
    private int base;
    private int held;
    private double before;
    private double best;
    private long bestAt;

    /**
     * @param beats takes the positions of the R peaks in order of time
     */
    QrsDetector(double hz, LongConsumer beats) {
        this.hz = hz;
        this.beats = beats;
        refractory = QrsFilter.samples(hz, REFRACTORY_SECONDS);
        begin(0);
    }

    private void begin(long first) {
        filter = new QrsFilter(hz);
        rPeak = new RPeak(filter, hz);
        origin = first;
        count = 0;
        before = 0;
        none();
    }

    private void none() {
        best = 0;
        bestAt = -1;
    }

    /** Takes the samples of this lead from {@code first} on; a missing one is the one before. */
    void take(long first, int[] samples) {
        if (first != origin + count) {
            finish();
            begin(first);
        }
        for (int sample : samples) {
            if (sample != Block.MISSING) {
                held = sample;
            }
            if (count == 0) {
                base = held;
            }
            next(filter.next(held - base));
        }
    }

    private void next(double height) {
        long at = count++;
        if (decision == null) {
            int second = (int) (at / hz);
            if (second < maxima.length) {
                maxima[second] = Math.max(maxima[second], height);
            } else {
                learn(maxima.length);
            }
        }
        peak(height, at);
    }

    /** The highest value with no higher one within the refractory period on either side. */
    private void peak(double height, long at) {
        if (height > best && (bestAt >= 0 || height > before)) {
            best = height;
            bestAt = at;
        } else if (bestAt >= 0 && at - bestAt >= refractory) {
            candidate();
            none();
        }
        before = height;
    }

    private void candidate() {
        long centre = bestAt - filter.delay();
        int reach = QrsFilter.samples(hz, SLOPE_REACH_SECONDS);
        var candidate =
                new Candidate(
                        origin + rPeak.near(centre),
                        best,
                        filter.steepest(centre, reach),
                        filter.balance(centre, QrsFilter.samples(hz, STEP_REACH_SECONDS)));
        if (decision == null) {
            early.add(candidate);
        } else {
            decision.take(candidate);
        }
    }

    /** The median of the highest values of the first seconds stands for the first QRS heights. */
    private void learn(int seconds) {
        var sorted = Arrays.copyOf(maxima, seconds);
        Arrays.sort(sorted);
        decision = new QrsDecision(hz, sorted[seconds / 2], beats);
        early.forEach(decision::take);
        early.clear();
    }

    /** The recording ends or has a gap here. */
    void finish() {
        if (count == 0) {
            return;
        }
        for (int i = filter.delay(); i > 0; i--) { // what the filters still hold
            next(filter.next(held - base));
        }
        if (decision == null) {
            learn((int) Math.min(maxima.length, (count - 1) / (long) Math.ceil(hz) + 1));
        }
        if (bestAt >= 0) {
            candidate();
        }
        decision.interrupt(origin + count - filter.delay());
        count = 0;
    }
}
