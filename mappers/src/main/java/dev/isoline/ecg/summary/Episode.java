package dev.isoline.ecg.summary;

import java.time.Duration;
import java.util.Optional;

/**
 * A stretch with one finding; stretches of different kinds may overlap.
 *
 * @param kind what it is
 * @param start of its first beat
 * @param duration from its first beat to its last
 * @param beats number of them, the first and the last included; a pause has the two around it
 * @param rates of the intervals between them
 */
public record Episode(
        EpisodeKind kind, Duration start, Duration duration, long beats, Optional<Rates> rates) {

    /**
     * Beats per minute. In fibrillation, bradycardia and tachycardia the lowest and highest are
     * means over {@link Threshold#RATE_BEATS} intervals, elsewhere those of one interval.
     */
    public record Rates(double mean, double min, double max) {}

    /** The same stretch under another name. */
    public Episode as(EpisodeKind name) {
        return new Episode(name, start, duration, beats, rates);
    }

    public Duration end() {
        return start.plus(duration);
    }
}
