package dev.isoline.ecgdicom.iod;

import dev.isoline.dicom.Tag;
import dev.isoline.ecg.Block;
import dev.isoline.ecgdicom.module.WaveformModule;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.WritableByteChannel;

/** Samples as PS3.3 C.10.9.1.7 orders them: all channels of one time, then the next time. */
final class SampleEncoder {

    private static final int SAMPLES_AT_A_TIME = 16 * 1024;

    private final int channels;
    private final boolean padded;
    private final WritableByteChannel target;
    private final short[] interleaved;
    private final ByteBuffer bytes;

    /**
     * @param padded whether a sample may be missing
     */
    SampleEncoder(int channels, boolean padded, WritableByteChannel target) {
        this.channels = channels;
        this.padded = padded;
        this.target = target;
        this.interleaved = new short[channels * SAMPLES_AT_A_TIME];
        this.bytes =
                ByteBuffer.allocateDirect(interleaved.length * Short.BYTES)
                        .order(ByteOrder.LITTLE_ENDIAN);
    }

    void write(int[][] leads, int from, int to) throws IOException {
        for (int at = from; at < to; at += SAMPLES_AT_A_TIME) {
            int count = Math.min(SAMPLES_AT_A_TIME, to - at);
            for (int channel = 0; channel < channels; channel++) {
                interleave(leads[channel], at, count, channel);
            }
            flush(count * channels);
        }
    }

    private void interleave(int[] lead, int from, int count, int channel) {
        int at = channel;
        for (int i = from; i < from + count; i++) {
            int sample = lead[i];
            interleaved[at] = sample == (short) sample ? (short) sample : padding(sample);
            at += channels;
        }
    }

    private short padding(int sample) {
        if (sample == Block.MISSING && padded) {
            return WaveformModule.PADDING;
        }
        throw new ContentError(
                Problem.error(
                        Problem.Kind.VALUE,
                        Tag.format(Tag.WaveformData),
                        "A sample does not fit the 16 bits of an ECG object."));
    }

    private void flush(int count) throws IOException {
        bytes.clear();
        bytes.asShortBuffer().put(interleaved, 0, count);
        bytes.limit(count * Short.BYTES);
        while (bytes.hasRemaining()) {
            target.write(bytes);
        }
    }
}
