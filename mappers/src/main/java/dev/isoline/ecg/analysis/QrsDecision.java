package dev.isoline.ecg.analysis;

import java.util.ArrayList;
import java.util.List;

/**
 * Tells QRS complexes from noise and T waves: threshold between the median heights of the last
 * eight of each, T wave by slope within 360 ms, search back after 1.5 mean intervals.
 */
final class QrsDecision {

    /** What becomes of a candidate. */
    interface Outcome {
        void complex(Candidate candidate);

        void noise(Candidate candidate);
    }

    /** Of the way from noise to signal (Hamilton and Tompkins 1986, from memory). */
    private static final double THRESHOLD = 0.3125;

    /** Of the threshold, where a beat is overdue: P waves that go on alone mostly stay below. */
    private static final double SEARCH_BACK = 0.75;

    /** Mean intervals after which a beat is overdue. */
    private static final double OVERDUE = 1.5;

    /** Of the slope of the QRS complex before (Pan and Tompkins 1985). */
    private static final double T_WAVE_SLOPE = 0.5;

    /** Of fall to rise or rise to fall; less is a step of the baseline. */
    private static final double STEP_BALANCE = 0.15;

    private static final double T_WAVE_SECONDS = 0.36;

    /**
     * Of the median interval: what comes later in a fast rhythm is an early broad beat (own
     * choice).
     */
    private static final double T_WAVE_SHARE = 0.6;

    private static final double LONGEST_INTERVAL_SECONDS = 3;
    private static final int MOST_REJECTED = 64;

    private final double tWaveSteps;
    private final double longestInterval;
    private final Outcome outcome;
    private final List<Candidate> rejected = new ArrayList<>();
    private final Median interval;
    private long last = Long.MIN_VALUE / 2;
    private double lastSlope;

    QrsDecision(Pace pace, Outcome outcome) {
        this.outcome = outcome;
        tWaveSteps = T_WAVE_SECONDS * pace.hz() / pace.step();
        longestInterval = pace.steps(LONGEST_INTERVAL_SECONDS);
        interval = new Median(pace.steps(1));
    }

    void take(Candidate candidate) {
        searchBack(candidate.step());
        if (isQrs(candidate)) {
            accept(candidate);
        } else {
            reject(candidate);
        }
    }

    private boolean isQrs(Candidate c) {
        return c.height() > THRESHOLD && c.balance() > STEP_BALANCE && !isTWave(c);
    }

    private boolean isTWave(Candidate c) {
        return c.step() - last < Math.min(tWaveSteps, T_WAVE_SHARE * interval.value())
                && c.slope() < T_WAVE_SLOPE * lastSlope;
    }

    private void accept(Candidate c) {
        if (last >= 0) {
            interval.add(Math.min(c.step() - last, longestInterval));
        }
        last = c.step();
        lastSlope = c.slope();
        rejected.removeIf(other -> other.step() <= c.step());
        outcome.complex(c);
    }

    private void reject(Candidate c) {
        if (rejected.size() == MOST_REJECTED) {
            rejected.remove(0);
        }
        rejected.add(c);
        outcome.noise(c);
    }

    /** A beat overdue is looked for among what was taken for noise. */
    void searchBack(long now) {
        while (last >= 0 && now - last > OVERDUE * interval.mean()) {
            var best = highestRejected();
            if (best == null || best.height() < SEARCH_BACK * THRESHOLD) {
                return;
            }
            accept(best);
        }
    }

    private Candidate highestRejected() {
        Candidate best = null;
        for (var c : rejected) {
            if (c.step() - last > tWaveSteps
                    && c.balance() > STEP_BALANCE
                    && (best == null || c.height() > best.height())) {
                best = c;
            }
        }
        return best;
    }

    /** The recording pauses here: no interval reaches across. */
    void interrupt(long end) {
        searchBack(end);
        rejected.clear();
        last = Long.MIN_VALUE / 2;
    }
}
