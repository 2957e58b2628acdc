package dev.isoline.ecg.rhythm;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.summary.Episode;
import dev.isoline.ecg.summary.EpisodeKind;
import java.time.Duration;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/** Intervals between successive beats, those that can be measured: not across {@link Breaks}. */
final class Intervals {

    /** Milliseconds of an interval that is none. */
    static final double NONE = Double.NaN;

    private static final double NANOS = 1e9;
    private static final double MINUTE = 60_000;

    private final List<Beat> beats;
    private final double hz;
    private final BitSet broken = new BitSet();

    Intervals(BeatTrack track) {
        this.beats = track.beats();
        this.hz = track.hz();
        int i = 0;
        for (var stretch : Breaks.of(track)) {
            while (i < count() && beats.get(i + 1).sample() < stretch.from()) {
                i++;
            }
            while (i < count() && beats.get(i).sample() < stretch.to()) {
                broken.set(i++);
            }
        }
    }

    /** Of beat {@code i} and the next; interval {@code i} begins at beat {@code i}. */
    int count() {
        return Math.max(0, beats.size() - 1);
    }

    int beats() {
        return beats.size();
    }

    boolean isMeasurable(int i) {
        return !broken.get(i);
    }

    /** In milliseconds, {@link #NONE} when it cannot be measured. */
    double milliseconds(int i) {
        return broken.get(i) ? NONE : (sample(i + 1) - sample(i)) * 1000 / hz;
    }

    long sample(int beat) {
        return beats.get(beat).sample();
    }

    /** When a beat was, in seconds. */
    double seconds(int beat) {
        return sample(beat) / hz;
    }

    /** When a beat was. */
    Duration at(int beat) {
        return time(sample(beat));
    }

    Duration between(int beat, int later) {
        return time(sample(later) - sample(beat));
    }

    /** Mean from one beat to a later one, per minute; {@link #NONE} across a break. */
    double rate(int first, int last) {
        for (int i = first; i < last; i++) {
            if (broken.get(i)) {
                return NONE;
            }
        }
        return MINUTE * (last - first) / ((sample(last) - sample(first)) * 1000 / hz);
    }

    /** From one beat to a later one; lowest and highest rate over so many intervals. */
    Episode averaged(EpisodeKind kind, int first, int last, int window) {
        double lowest = Double.POSITIVE_INFINITY;
        double highest = 0;
        int width = Math.min(window, last - first);
        for (int i = first; i + width <= last; i++) {
            lowest = Math.min(lowest, rate(i, i + width));
            highest = Math.max(highest, rate(i, i + width));
        }
        return episode(kind, first, last, lowest, highest);
    }

    /** From one beat to a later one; rates are those of single intervals. */
    Episode episode(EpisodeKind kind, int first, int last) {
        return averaged(kind, first, last, 1);
    }

    private Episode episode(EpisodeKind kind, int first, int last, double lowest, double highest) {
        var rates = new Episode.Rates(rate(first, last), lowest, highest);
        return new Episode(
                kind, at(first), between(first, last), last - first + 1, Optional.of(rates));
    }

    Duration time(long samples) {
        return Duration.ofNanos(Math.round(samples * NANOS / hz));
    }

    Beat.Kind kind(int beat) {
        return beats.get(beat).kind();
    }

    int hour(int beat) {
        return (int) (sample(beat) / hz / 3600);
    }
}
