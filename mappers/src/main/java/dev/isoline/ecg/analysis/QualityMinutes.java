package dev.isoline.ecg.analysis;

import dev.isoline.ecg.summary.MinuteQuality;
import java.util.AbstractList;
import java.util.Arrays;
import java.util.Optional;
import java.util.RandomAccess;

/** The minutes of a lead: eight bytes each for the levels, the rest counted in the marks. */
final class QualityMinutes extends AbstractList<MinuteQuality> implements RandomAccess {

    private static final int BITS = 16;
    private static final int MOST = (1 << BITS) - 1;
    private static final long NOTHING = -1;

    private final QualityMarks marks;
    private final boolean calibrated;
    private long[] levels = new long[64];
    private int measured;

    QualityMinutes(QualityMarks marks, boolean calibrated) {
        this.marks = marks;
        this.calibrated = calibrated;
    }

    /** Minutes come in order of time; those in between hold nothing that could be measured. */
    void add(int minute, MinuteLevels of, double microvolts) {
        if (minute >= levels.length) {
            levels = Arrays.copyOf(levels, Math.max(minute + 1, 2 * levels.length));
        }
        Arrays.fill(levels, measured, minute, NOTHING);
        levels[minute] =
                packed(of.amplitude() * microvolts) << 3 * BITS
                        | packed(of.mains() * microvolts) << 2 * BITS
                        | packed(of.muscle() * microvolts) << BITS
                        | packed(of.wander() * microvolts);
        measured = minute + 1;
    }

    /** Under 65,535 microvolts each, so that no minute reads like one without levels. */
    private static long packed(double microvolts) {
        return Math.round(Math.min(MOST - 1, microvolts));
    }

    @Override
    public MinuteQuality get(int minute) {
        if (minute < 0 || minute >= size()) {
            throw new IndexOutOfBoundsException(minute);
        }
        int from = minute * MinuteLevels.SECONDS;
        int to = from + MinuteLevels.SECONDS;
        return new MinuteQuality(
                minute,
                marks.recorded(from, to),
                marks.usable(from, to),
                marks.disturbed(from, to),
                levels(minute));
    }

    private Optional<MinuteQuality.Levels> levels(int minute) {
        if (!calibrated || minute >= measured || levels[minute] == NOTHING) {
            return Optional.empty();
        }
        long packed = levels[minute];
        return Optional.of(
                new MinuteQuality.Levels(
                        (int) (packed >>> 3 * BITS),
                        (int) (packed >>> 2 * BITS) & MOST,
                        (int) (packed >>> BITS) & MOST,
                        (int) packed & MOST));
    }

    /** Median of the minutes' amplitudes, microvolts; empty without calibration. */
    Optional<Double> amplitude() {
        double[] sorted =
                Arrays.stream(levels, 0, measured)
                        .filter(packed -> packed != NOTHING)
                        .mapToDouble(packed -> packed >>> 3 * BITS)
                        .sorted()
                        .toArray();
        return !calibrated || sorted.length == 0
                ? Optional.empty()
                : Optional.of(sorted[sorted.length / 2]);
    }

    @Override
    public int size() {
        return (marks.seconds() + MinuteLevels.SECONDS - 1) / MinuteLevels.SECONDS;
    }
}
