package dev.isoline.ecgdicom;

import java.time.OffsetDateTime;

/**
 * An object that was written, as ImagingStudy.series.instance and a delivery need it.
 *
 * @param sopClassUid SOP Class UID
 * @param sopInstanceUid SOP Instance UID
 * @param seriesInstanceUid the series all objects of one recording share
 * @param studyInstanceUid the order's study
 * @param number Instance Number, from 1
 * @param start of its first sample
 * @param firstSample position on the recording's time axis
 * @param samples per channel
 * @param bytes of the Part 10 file
 */
public record WrittenObject(
        String sopClassUid,
        String sopInstanceUid,
        String seriesInstanceUid,
        String studyInstanceUid,
        int number,
        OffsetDateTime start,
        long firstSample,
        long samples,
        long bytes) {}
