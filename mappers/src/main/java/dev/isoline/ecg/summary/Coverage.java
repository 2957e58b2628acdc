package dev.isoline.ecg.summary;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/**
 * What was recorded, and how much of it could be measured.
 *
 * @param start local time at the patient, where the recording gives it
 * @param recorded time that holds samples: gaps left out
 * @param analysable the part of it in which a lead was good enough to measure
 * @param hz sampling frequency
 * @param detectionLeads labels of the leads the beats were found on
 * @param leads quality of each lead that was looked at, in the order of the recording
 */
public record Coverage(
        Optional<LocalDateTime> start,
        Duration recorded,
        Duration analysable,
        double hz,
        List<String> detectionLeads,
        List<LeadReport> leads) {

    /** Of the recorded time, percent; 0 when nothing was recorded. */
    public double analysablePercent() {
        return recorded.isZero() ? 0 : 100.0 * analysable.toNanos() / recorded.toNanos();
    }
}
