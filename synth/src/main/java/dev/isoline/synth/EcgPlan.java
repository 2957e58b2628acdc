package dev.isoline.synth;

import java.util.List;
import java.util.Set;

/**
 * What to synthesise; the same plan gives the same samples on every machine.
 *
 * @param hz samples a second and lead
 * @param seconds length
 * @param leads names known to {@link LeadShape}
 * @param seed of variability and noise
 * @param rate beats a minute along the recording
 * @param ventricular numbers of the beats that are ventricular, the first beat is 0
 * @param supraventricular numbers of the beats that are supraventricular
 * @param pause the one long interval
 */
public record EcgPlan(
        int hz,
        int seconds,
        List<String> leads,
        long seed,
        Rate rate,
        Set<Integer> ventricular,
        Set<Integer> supraventricular,
        Pause pause,
        Noise noise) {

    /** Samples of one millivolt, as in the MIT-BIH records: 5 microvolts a unit. */
    public static final int UNITS_PER_MILLIVOLT = 200;

    /** Lowest and highest sample of a 12-bit converter. */
    public static final int LOWEST = -2048;

    public static final int HIGHEST = 2047;

    /**
     * Straight from {@code first} to {@code last}, beats a minute.
     *
     * @param breathing share of the interval that goes up and down with breathing
     * @param jitter standard deviation of the rest, as a share of the interval
     */
    public record Rate(double first, double last, double breathing, double jitter) {}

    /**
     * @param afterBeat number of the beat it follows
     * @param seconds to the next beat
     */
    public record Pause(int afterBeat, double seconds) {}

    public long samples() {
        return (long) hz * seconds;
    }

    BeatKind kind(int beat) {
        if (ventricular.contains(beat)) {
            return BeatKind.VENTRICULAR;
        }
        return supraventricular.contains(beat) ? BeatKind.SUPRAVENTRICULAR : BeatKind.NORMAL;
    }
}
