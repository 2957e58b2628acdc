package dev.isoline.delivery;

import dev.isoline.settings.IsolineProperties.DeliverySettings;
import java.time.Duration;

/**
 * Twice the pause after each failure, up to the longest; no chance in it, so it can be foretold.
 */
record Backoff(Duration first, Duration longest, int attempts) {

    private static final int MOST_DOUBLINGS = 30;

    static Backoff of(DeliverySettings settings) {
        return new Backoff(settings.firstRetry(), settings.longestRetry(), settings.attempts());
    }

    /** Whether a person has to look after this many attempts. */
    boolean isExhausted(int tried) {
        return tried >= attempts;
    }

    Duration pauseAfter(int tried) {
        Duration pause = first.multipliedBy(1L << Math.min(tried - 1, MOST_DOUBLINGS));
        return pause.compareTo(longest) < 0 ? pause : longest;
    }
}
