package dev.isoline.ecg.rhythm;

import dev.isoline.ecg.summary.HeartRates.Interval;
import dev.isoline.ecg.summary.HeartRates.Rate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Heart rates of the recording and of each of its hours; an interval counts where it begins. */
final class Rates {

    private final Intervals intervals;
    private final int window;
    private final RateMeasure whole = new RateMeasure();
    private final List<RateMeasure> hours = new ArrayList<>();
    private final double[] ring;

    /**
     * @param window number of intervals a minimum or maximum is averaged over
     */
    Rates(Intervals intervals, int window) {
        this.intervals = intervals;
        this.window = window;
        ring = new double[window];
        measure();
    }

    private void measure() {
        double sum = 0;
        int run = 0;
        for (int i = 0; i < intervals.count(); i++) {
            double length = intervals.milliseconds(i);
            if (Double.isNaN(length)) {
                run = 0;
                sum = 0;
                continue;
            }
            count(i, length);
            sum += length - (run >= window ? ring[i % window] : 0);
            ring[i % window] = length;
            if (++run >= window) {
                window(i - window + 1, sum / window);
            }
        }
    }

    private void count(int i, double length) {
        var at = intervals.at(i);
        whole.interval(at, length);
        measure(intervals.hour(i)).interval(at, length);
    }

    private void window(int i, double mean) {
        var at = intervals.at(i);
        whole.window(at, mean);
        measure(intervals.hour(i)).window(at, mean);
    }

    private RateMeasure measure(int hour) {
        while (hours.size() <= hour) {
            hours.add(new RateMeasure());
        }
        return hours.get(hour);
    }

    Optional<Rate> whole() {
        return whole.rate();
    }

    Optional<Rate> hour(int hour) {
        return hour < hours.size() ? hours.get(hour).rate() : Optional.empty();
    }

    Optional<Interval> longest() {
        int longest = -1;
        double most = 0;
        for (int i = 0; i < intervals.count(); i++) {
            if (intervals.milliseconds(i) > most) {
                most = intervals.milliseconds(i);
                longest = i;
            }
        }
        return longest < 0
                ? Optional.empty()
                : Optional.of(
                        new Interval(
                                intervals.at(longest), intervals.between(longest, longest + 1)));
    }
}
