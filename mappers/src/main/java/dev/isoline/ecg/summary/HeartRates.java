package dev.isoline.ecg.summary;

import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * Heart rates.
 *
 * @param whole over the recording; empty without a measurable interval
 * @param hours one entry per started hour of the recording
 * @param longestRr longest interval between two successive beats, gaps left out
 */
public record HeartRates(Optional<Rate> whole, List<Hour> hours, Optional<Interval> longestRr) {

    /** Beats per minute; minimum and maximum of the rate averaged over the settings' beats. */
    public record Rate(double mean, double min, Duration minAt, double max, Duration maxAt) {}

    /**
     * One hour of the recording.
     *
     * @param from offset of its beginning
     * @param analysable time in it
     * @param beats found in it
     * @param ventricular those of class V
     * @param supraventricular those of class S
     * @param rate empty when it holds no measurable interval
     */
    public record Hour(
            Duration from,
            Duration analysable,
            long beats,
            long ventricular,
            long supraventricular,
            Optional<Rate> rate) {}

    /** The time between two successive beats; {@code at} is the first of them. */
    public record Interval(Duration at, Duration length) {}
}
