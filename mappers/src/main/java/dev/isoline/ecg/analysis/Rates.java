package dev.isoline.ecg.analysis;

import java.time.Duration;
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
        hour(intervals.hour(i)).interval(at, length);
    }

    private void window(int i, double mean) {
        var at = intervals.at(i);
        whole.window(at, mean);
        hour(intervals.hour(i)).window(at, mean);
    }

    private RateMeasure hour(int hour) {
        while (hours.size() <= hour) {
            hours.add(new RateMeasure());
        }
        return hours.get(hour);
    }

    Optional<Summary.Rate> whole() {
        return whole.rate();
    }

    /** One entry per started hour. */
    List<Summary.Hour> hours(Duration length) {
        long started = (length.toNanos() - 1) / Duration.ofHours(1).toNanos() + 1;
        var beats = new long[(int) started];
        for (int i = 0; i <= intervals.count() && !intervals.isEmpty(); i++) {
            beats[(int) Math.min(started - 1, intervals.hour(i))]++;
        }
        var entries = new ArrayList<Summary.Hour>();
        for (int i = 0; i < started; i++) {
            entries.add(new Summary.Hour(Duration.ofHours(i), beats[i], hour(i).rate()));
        }
        return List.copyOf(entries);
    }
}
