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
 * @param amplitude of all waves, as a share of their usual height
 * @param fibrillation where the atria fibrillate: irregular intervals, no P waves
 * @param troubles of single leads
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
        Noise noise,
        double amplitude,
        List<Span> fibrillation,
        List<Trouble> troubles) {

    /** Samples of one millivolt, as in the MIT-BIH records: 5 microvolts a unit. */
    public static final int UNITS_PER_MILLIVOLT = 200;

    /** Lowest and highest sample of a 12-bit converter. */
    public static final int LOWEST = -2048;

    public static final int HIGHEST = 2047;

    /** Waves of usual height, no fibrillation, no troubles. */
    public EcgPlan(
            int hz,
            int seconds,
            List<String> leads,
            long seed,
            Rate rate,
            Set<Integer> ventricular,
            Set<Integer> supraventricular,
            Pause pause,
            Noise noise) {
        this(
                hz,
                seconds,
                leads,
                seed,
                rate,
                ventricular,
                supraventricular,
                pause,
                noise,
                1,
                List.of(),
                List.of());
    }

    /** Sinus rhythm of one rate and nothing else, on MLII and V1. */
    public static EcgPlan steady(int hz, int seconds, double perMinute) {
        return new EcgPlan(
                hz,
                seconds,
                List.of("MLII", "V1"),
                1,
                new Rate(perMinute, perMinute, 0, 0),
                Set.of(),
                Set.of(),
                Pause.NONE,
                Noise.NONE);
    }

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
    public record Pause(int afterBeat, double seconds) {

        public static final Pause NONE = new Pause(-1, 0);
    }

    public EcgPlan with(Set<Integer> ventricular, Set<Integer> supraventricular) {
        return with(rate, ventricular, supraventricular, pause, noise);
    }

    public EcgPlan with(Pause pause) {
        return with(rate, ventricular, supraventricular, pause, noise);
    }

    public EcgPlan with(Noise noise) {
        return with(rate, ventricular, supraventricular, pause, noise);
    }

    public EcgPlan with(Rate rate) {
        return with(rate, ventricular, supraventricular, pause, noise);
    }

    public EcgPlan withAmplitude(double amplitude) {
        return with(amplitude, fibrillation, troubles);
    }

    public EcgPlan with(Span... fibrillation) {
        return with(amplitude, List.of(fibrillation), troubles);
    }

    public EcgPlan with(Trouble... troubles) {
        return with(amplitude, fibrillation, List.of(troubles));
    }

    /** Other beats and noise. */
    private EcgPlan with(
            Rate rate,
            Set<Integer> ventricular,
            Set<Integer> supraventricular,
            Pause pause,
            Noise noise) {
        return new EcgPlan(
                        hz, seconds, leads, seed, rate, ventricular, supraventricular, pause, noise)
                .with(amplitude, fibrillation, troubles);
    }

    /** The same beats, otherwise disturbed. */
    private EcgPlan with(double amplitude, List<Span> fibrillation, List<Trouble> troubles) {
        return new EcgPlan(
                hz,
                seconds,
                leads,
                seed,
                rate,
                ventricular,
                supraventricular,
                pause,
                noise,
                amplitude,
                fibrillation,
                troubles);
    }

    public long samples() {
        return (long) hz * seconds;
    }

    BeatKind kind(int beat) {
        if (ventricular.contains(beat)) {
            return BeatKind.VENTRICULAR;
        }
        return supraventricular.contains(beat) ? BeatKind.SUPRAVENTRICULAR : BeatKind.NORMAL;
    }

    boolean fibrillates(double seconds) {
        return fibrillation.stream().anyMatch(span -> span.holds(seconds));
    }
}
