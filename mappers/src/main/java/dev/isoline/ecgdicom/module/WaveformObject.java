package dev.isoline.ecgdicom.module;

import dev.isoline.dicom.BulkValue;
import dev.isoline.ecg.Lead;
import dev.isoline.ecgdicom.OrderContext;
import dev.isoline.ecgdicom.annotation.WaveformAnnotation;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;

/**
 * All that the modules of one waveform object are made from.
 *
 * @param start of the first sample
 * @param signal what was sampled
 * @param samples per channel
 * @param annotations of these samples
 * @param data the samples, 16-bit little endian, channel by channel within each sample time
 */
public record WaveformObject(
        OrderContext order,
        String sopClassUid,
        String sopInstanceUid,
        Series series,
        int number,
        OffsetDateTime start,
        Signal signal,
        long samples,
        List<WaveformAnnotation> annotations,
        BulkValue data)
        implements CompositeObject {

    /**
     * What the objects of one recording have in common.
     *
     * @param hz sampling frequency, a whole number
     * @param leads channels, in their order
     * @param padded whether a sample may be missing
     * @param equipment recorder as the file names it
     */
    public record Signal(int hz, List<Lead> leads, boolean padded, String equipment) {}

    @Override
    public Optional<OffsetDateTime> begins() {
        return Optional.of(start);
    }

    @Override
    public String equipment() {
        return signal.equipment();
    }

    /** The same object with another number of samples. */
    public WaveformObject with(long otherSamples, BulkValue otherData) {
        return new WaveformObject(
                order,
                sopClassUid,
                sopInstanceUid,
                series,
                number,
                start,
                signal,
                otherSamples,
                annotations,
                otherData);
    }
}
