package dev.isoline.dicom.waveform;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Tag;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalInt;

/**
 * Channels sampled together: one item of Waveform Sequence (5400,0100), PS3.3 C.10.9.1. Samples are
 * read piece by piece, so a day of them is never in memory.
 */
public final class MultiplexGroup {

    private static final int MOST_CHANNELS = 0xFFFF;

    private final List<Channel> channels;
    private final long samples;
    private final double hz;
    private final SampleFormat format;
    private final OptionalInt padding;
    private final SampleBytes data;

    private MultiplexGroup(DataSet item) throws DicomException {
        this.samples = required(item, Tag.NumberOfWaveformSamples);
        this.hz =
                item.number(Tag.SamplingFrequency)
                        .orElseThrow(() -> missing(Tag.SamplingFrequency));
        this.format =
                SampleFormat.of(
                        item.text(Tag.WaveformSampleInterpretation).orElse(""),
                        required(item, Tag.WaveformBitsAllocated));
        this.channels = channels(item);
        this.padding = padding(item, format);
        this.data =
                new SampleBytes(
                        item.element(Tag.WaveformData)
                                .orElseThrow(() -> missing(Tag.WaveformData)));
        checkLength();
    }

    /**
     * An item of Waveform Sequence.
     *
     * @throws DicomException where the item contradicts itself or cannot be read here
     */
    public static MultiplexGroup of(DataSet item) throws DicomException {
        return new MultiplexGroup(item);
    }

    private static long required(DataSet item, int tag) throws DicomException {
        return item.integer(tag).orElseThrow(() -> missing(tag));
    }

    private static DicomException missing(int tag) {
        return new DicomException(tag, "is missing");
    }

    private static List<Channel> channels(DataSet item) throws DicomException {
        var channels = new ArrayList<Channel>();
        for (DataSet definition : item.items(Tag.ChannelDefinitionSequence)) {
            channels.add(Channel.of(definition));
        }
        long count = required(item, Tag.NumberOfWaveformChannels);
        if (count != channels.size() || count == 0 || count > MOST_CHANNELS) {
            throw new DicomException(
                    Tag.NumberOfWaveformChannels,
                    "is " + count + ", but " + channels.size() + " channels are defined");
        }
        return List.copyOf(channels);
    }

    private static OptionalInt padding(DataSet item, SampleFormat format) throws DicomException {
        byte[] bytes = item.bytes(Tag.WaveformPaddingValue);
        if (bytes.length < format.width()) {
            return OptionalInt.empty();
        }
        return OptionalInt.of(format.sample(ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN)));
    }

    private void checkLength() throws DicomException {
        long expected = samples * channels.size() * format.width();
        if (data.length() != expected && data.length() != expected + (expected & 1)) {
            throw new DicomException(
                    Tag.WaveformData,
                    "has " + data.length() + " bytes, but its counts say " + expected);
        }
    }

    public List<Channel> channels() {
        return channels;
    }

    /** Samples of each channel. */
    public long samples() {
        return samples;
    }

    /** Sampling Frequency (003A,001A). */
    public double hz() {
        return hz;
    }

    /** The sample that stands for none, Waveform Padding Value (5400,100A). */
    public OptionalInt padding() {
        return padding;
    }

    /**
     * Samples as they were encoded, channels interleaved in the file (C.10.9.1.7).
     *
     * @param first index of the first sample
     * @param count samples of each channel
     * @return one array a channel
     */
    public int[][] samples(long first, int count) throws IOException {
        Objects.checkFromIndexSize(first, (long) count, samples);
        int frame = channels.size() * format.width();
        ByteBuffer bytes = data.part(first * frame, Math.multiplyExact(count, frame));
        var read = new int[channels.size()][count];
        for (int i = 0; i < count; i++) {
            for (int[] channel : read) {
                channel[i] = format.sample(bytes);
            }
        }
        return read;
    }

    /** The same as quantities in the units of each channel; NaN where no sample was taken. */
    public double[][] values(long first, int count) throws IOException {
        int[][] read = samples(first, count);
        var values = new double[read.length][count];
        for (int c = 0; c < read.length; c++) {
            for (int i = 0; i < count; i++) {
                values[c][i] = value(channels.get(c), read[c][i]);
            }
        }
        return values;
    }

    private double value(Channel channel, int sample) {
        boolean none = padding.isPresent() && padding.getAsInt() == sample;
        return none ? Double.NaN : channel.value(sample);
    }
}
