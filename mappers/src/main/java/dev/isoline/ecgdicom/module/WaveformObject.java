package dev.isoline.ecgdicom.module;

import dev.isoline.dicom.BulkValue;
import dev.isoline.ecg.Lead;
import dev.isoline.ecgdicom.OrderContext;
import java.time.OffsetDateTime;
import java.time.ZonedDateTime;
import java.util.List;

/**
 * All that the modules of one waveform object are made from.
 *
 * @param order who and why
 * @param sopClassUid SOP Class UID
 * @param sopInstanceUid SOP Instance UID
 * @param series what all objects of the recording share
 * @param number Instance Number, from 1
 * @param start of the first sample
 * @param samples per channel
 * @param data the samples, 16-bit little endian, channel by channel within each sample time
 */
public record WaveformObject(
        OrderContext order,
        String sopClassUid,
        String sopInstanceUid,
        Series series,
        int number,
        OffsetDateTime start,
        long samples,
        BulkValue data) {

    /**
     * @param uid Series Instance UID
     * @param start of the recording
     * @param hz sampling frequency, a whole number
     * @param leads channels, in their order
     * @param equipment recorder as the file names it
     */
    public record Series(
            String uid, ZonedDateTime start, int hz, List<Lead> leads, String equipment) {}

    /** The same object with another number of samples. */
    public WaveformObject with(long otherSamples, BulkValue otherData) {
        return new WaveformObject(
                order, sopClassUid, sopInstanceUid, series, number, start, otherSamples, otherData);
    }
}
