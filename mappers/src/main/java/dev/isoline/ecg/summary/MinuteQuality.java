package dev.isoline.ecg.summary;

import java.util.Map;
import java.util.Optional;

/**
 * Signal quality of one lead in one minute of the recording.
 *
 * @param minute number of it, the first is 0
 * @param recorded seconds of it that hold samples, 0 to 60
 * @param usable seconds of it in which beats can be taken from this lead
 * @param disturbed seconds in which each kind was found, kinds that were not left out
 * @param levels empty when nothing could be measured or the lead is not calibrated
 */
public record MinuteQuality(
        int minute,
        int recorded,
        int usable,
        Map<Disturbance, Integer> disturbed,
        Optional<Levels> levels) {

    /**
     * What is typical of the minute, in microvolts.
     *
     * @param amplitude of the QRS complexes, peak to peak
     * @param mains amplitude of the stronger of 50 and 60 Hz
     * @param muscle root mean square of the noise above about 30 Hz
     * @param wander of the baseline within 5 s, peak to peak
     */
    public record Levels(int amplitude, int mains, int muscle, int wander) {}
}
