package dev.isoline.ecg.summary;

import java.time.Duration;
import java.util.Optional;

/**
 * Ectopic beats of one class. A couplet is two in a row, a triplet three, a run as many as {@link
 * Threshold#RUN_BEATS} or more: a triplet is also a run where that is three.
 *
 * @param beats number of them
 * @param percent share of all beats; 0 when there are none
 * @param perHour mean over the analysable time; empty when there is none
 * @param most the hour with the most of them; empty when there are none
 * @param couplets number of them
 * @param triplets number of them
 * @param runs number of them
 * @param runBeats beats within runs
 * @param longestRun by beats, then by duration
 * @param fastestRun by its mean rate
 * @param bigeminy alternating with normal beats
 * @param trigeminy every third beat
 */
public record Ectopy(
        long beats,
        double percent,
        Optional<Double> perHour,
        Optional<MostInHour> most,
        long couplets,
        long triplets,
        long runs,
        long runBeats,
        Optional<Episode> longestRun,
        Optional<Episode> fastestRun,
        Pattern bigeminy,
        Pattern trigeminy) {

    /** The hour that begins at {@code from}. */
    public record MostInHour(Duration from, long beats) {}

    /**
     * How often a pattern was seen.
     *
     * @param episodes number of them
     * @param ectopic beats of the class within them
     */
    public record Pattern(long episodes, long ectopic) {}
}
