package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Stretch;
import java.time.Duration;
import java.util.BitSet;
import java.util.List;

/**
 * Intervals between successive beats, those that can be measured: not across a gap, a second in
 * which no lead is usable, or a stretch of ventricular flutter.
 */
final class Intervals {

    /** Milliseconds of an interval that is none. */
    static final double NONE = Double.NaN;

    private static final double NANOS = 1e9;

    private final List<Beat> beats;
    private final Timeline timeline;
    private final BitSet unusable;
    private final List<Stretch> flutter;

    Intervals(List<Beat> beats, Detection detection, List<Stretch> flutter) {
        this.beats = beats;
        this.timeline = detection.timeline();
        this.unusable = detection.unusableSeconds();
        this.flutter = flutter;
    }

    /** Of beat {@code i} and the next; interval {@code i} begins at beat {@code i}. */
    int count() {
        return Math.max(0, beats.size() - 1);
    }

    /** Whether there is no beat at all. */
    boolean isEmpty() {
        return beats.isEmpty();
    }

    /** In milliseconds, {@link #NONE} when it cannot be measured. */
    double milliseconds(int i) {
        long from = beats.get(i).sample();
        long to = beats.get(i + 1).sample();
        return isMeasurable(from, to) ? (to - from) * 1000 / timeline.hz() : NONE;
    }

    private boolean isMeasurable(long from, long to) {
        int next = unusable.nextSetBit((int) (from / timeline.hz()));
        return (next < 0 || next > (int) (to / timeline.hz()))
                && !timeline.gapBetween(from, to)
                && flutter.stream().noneMatch(s -> s.from() <= to && from <= s.to());
    }

    /** When beat {@code i} was. */
    Duration at(int i) {
        return time(beats.get(i).sample());
    }

    Duration time(long sample) {
        return Duration.ofNanos(Math.round(sample * NANOS / timeline.hz()));
    }

    Beat.Kind kind(int i) {
        return beats.get(i).kind();
    }

    int hour(int i) {
        return (int) at(i).toHours();
    }
}
