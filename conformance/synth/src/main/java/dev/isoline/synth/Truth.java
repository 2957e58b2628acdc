package dev.isoline.synth;

import java.util.List;

/**
 * The right answer for a synthetic recording, computed from the beats we placed and from nothing
 * else. Definitions: docs/demo.md.
 *
 * @param beats all of them, ectopic ones included
 * @param meanRate beats a minute from the first to the last beat
 * @param minRate lowest rate over {@value #RATE_INTERVALS} successive intervals
 * @param maxRate highest one
 * @param longestRr milliseconds between two successive beats
 * @param pauses every interval of {@value #PAUSE_MS} ms or more, milliseconds
 * @param sdnn milliseconds, n - 1 (Task Force ESC/NASPE 1996)
 * @param rmssd milliseconds (same)
 * @param pnn50 percent (same)
 */
public record Truth(
        long beats,
        long ventricular,
        long supraventricular,
        double meanRate,
        double minRate,
        double maxRate,
        double longestRr,
        List<Double> pauses,
        double sdnn,
        double rmssd,
        double pnn50) {

    /** Rate over 8 beats and pauses from 2.0 s: common practice, no source. */
    static final int RATE_INTERVALS = 8;

    static final double PAUSE_MS = 2000;

    static Truth of(EcgPlan plan, List<TrueBeat> beats) {
        Intervals all = Intervals.of(plan.hz(), beats);
        return new Truth(
                beats.size(),
                count(beats, BeatKind.VENTRICULAR),
                count(beats, BeatKind.SUPRAVENTRICULAR),
                60_000 / all.mean(),
                60_000 / all.highestMeanOf(RATE_INTERVALS),
                60_000 / all.lowestMeanOf(RATE_INTERVALS),
                all.longest(),
                all.from(PAUSE_MS),
                all.sdnn(),
                all.rmssd(),
                all.pnn50());
    }

    private static long count(List<TrueBeat> beats, BeatKind kind) {
        return beats.stream().filter(b -> b.kind() == kind).count();
    }
}
