package dev.isoline.ecg.summary;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Signal quality of one lead over the whole recording, judged second by second (docs/quality.md).
 *
 * @param label of the lead
 * @param recorded seconds that hold samples of the recording, gaps left out
 * @param usable seconds of it in which beats can be taken from this lead
 * @param disturbed for each kind, the seconds in which it was found; they overlap
 * @param amplitude median of the minutes' typical QRS heights, peak to peak, microvolts; empty when
 *     the lead is not calibrated or nothing could be measured
 * @param minutes one entry per started minute; made while it is read, so that a fortnight stays
 *     small
 */
public record LeadReport(
        String label,
        Duration recorded,
        Duration usable,
        Map<Disturbance, Duration> disturbed,
        Optional<Double> amplitude,
        List<MinuteQuality> minutes) {

    /** Of the recorded time, 0 to 1; 0 when nothing was recorded. */
    public double usableShare() {
        return recorded.isZero() ? 0 : (double) usable.toSeconds() / recorded.toSeconds();
    }
}
