package dev.isoline.ecg.rhythm;

import dev.isoline.ecg.summary.HeartRates.Rate;
import java.time.Duration;
import java.util.Optional;

/**
 * Heart rate: the mean over all measurable intervals; minimum and maximum of the mean over so many
 * successive ones. Where no run of intervals is that long, all three are the mean.
 */
final class RateMeasure {

    private static final double MINUTE = 60_000;

    private double total;
    private long intervals;
    private Duration first;
    private double min = Double.POSITIVE_INFINITY;
    private double max = Double.NEGATIVE_INFINITY;
    private Duration minAt;
    private Duration maxAt;

    void interval(Duration at, double milliseconds) {
        first = first == null ? at : first;
        total += milliseconds;
        intervals++;
    }

    void window(Duration at, double meanMilliseconds) {
        double rate = MINUTE / meanMilliseconds;
        if (rate < min) {
            min = rate;
            minAt = at;
        }
        if (rate > max) {
            max = rate;
            maxAt = at;
        }
    }

    Optional<Rate> rate() {
        if (intervals == 0) {
            return Optional.empty();
        }
        double mean = MINUTE * intervals / total;
        return Optional.of(
                minAt == null
                        ? new Rate(mean, mean, first, mean, first)
                        : new Rate(mean, min, minAt, max, maxAt));
    }
}
