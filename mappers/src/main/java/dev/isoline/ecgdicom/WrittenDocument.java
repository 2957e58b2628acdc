package dev.isoline.ecgdicom;

/**
 * A document that was written as an object.
 *
 * @param studyInstanceUid the order's study, that of its waveforms
 * @param bytes of the Part 10 file
 */
public record WrittenDocument(
        String sopClassUid,
        String sopInstanceUid,
        String seriesInstanceUid,
        String studyInstanceUid,
        long bytes) {}
