package dev.isoline.ecgfhir;

import java.time.Instant;
import java.util.Optional;

/**
 * One DICOM object made from the recording.
 *
 * @param number Instance Number (0020,0013)
 * @param start of its first sample, where the recording gives it
 * @param samples per channel
 */
public record WaveformObject(
        String studyUid,
        String seriesUid,
        String sopClassUid,
        String sopInstanceUid,
        int number,
        Optional<Instant> start,
        long samples) {}
