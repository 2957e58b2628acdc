package dev.isoline.ecg.dicom;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.Tag;
import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Block;
import dev.isoline.ecg.ChannelBytes;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.RecordingFiles;
import dev.isoline.ecg.RecordingHeader;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.SeekableByteChannel;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A recording in a DICOM waveform object, PS3.3 C.10.9: its first multiplex group. Annotations of
 * the object are not read.
 */
public final class DicomRecording implements Recording {

    private static final int PREAMBLE = 128;
    private static final byte[] DICM = "DICM".getBytes(StandardCharsets.US_ASCII);

    /** Bytes decoded at a time. */
    private static final int WINDOW = 1 << 16;

    /** Of a value, names and numbers are read; samples and positions stay in the file. */
    private static final ReadLimits LIMITS = new ReadLimits(32, 200_000, 512, 16 << 20);

    /**
     * The object as an archive knows it.
     *
     * @param number Instance Number (0020,0013); 1 where there is none
     */
    public record ObjectUids(
            String study, String series, String sopClass, String sopInstance, int number) {}

    private final SeekableByteChannel channel;
    private final DicomWaveform waveform;
    private final RecordingHeader header;
    private final ObjectUids uids;
    private final Optional<ZoneOffset> offset;
    private final ByteBuffer window;
    private long position;

    private DicomRecording(SeekableByteChannel channel) throws IOException {
        this.channel = channel;
        var dataSet = Part10.read(channel, LIMITS).dataSet();
        var notes = new ArrayList<String>();
        waveform = DicomWaveform.of(dataSet, channel, notes);
        var said = new DicomHeader(dataSet);
        header = said.header(waveform, notes);
        offset = said.offset();
        uids = uids(dataSet);
        int frame = waveform.frameBytes();
        window =
                ByteBuffer.allocate(Math.max(1, WINDOW / frame) * frame)
                        .order(ByteOrder.LITTLE_ENDIAN);
    }

    /** Whether a file that begins so is a DICOM file (PS3.10 7.1). */
    public static boolean begins(byte[] start) {
        int end = PREAMBLE + DICM.length;
        return start.length >= end && Arrays.equals(start, PREAMBLE, end, DICM, 0, DICM.length);
    }

    /** Opens the named file; the channel is closed again when it is no such recording. */
    public static DicomRecording open(RecordingFiles files, String name) throws IOException {
        var channel = files.open(name);
        try {
            if (channel instanceof SeekableByteChannel seekable) {
                return new DicomRecording(seekable);
            }
            throw new RecordingException(
                    "A DICOM object in an archive is not read; send the object itself.");
        } catch (DicomException e) {
            channel.close();
            throw new RecordingException(
                    "The DICOM object cannot be read: " + e.getMessage() + ".");
        } catch (IOException | RuntimeException e) {
            channel.close();
            throw e;
        }
    }

    public ObjectUids uids() {
        return uids;
    }

    /** In which the start is, where the object says so. */
    public Optional<ZoneOffset> offset() {
        return offset;
    }

    private static ObjectUids uids(DataSet dataSet) throws DicomException {
        return new ObjectUids(
                dataSet.text(Tag.StudyInstanceUID).orElse(""),
                dataSet.text(Tag.SeriesInstanceUID).orElse(""),
                dataSet.text(Tag.SOPClassUID).orElse(""),
                dataSet.text(Tag.SOPInstanceUID).orElse(""),
                dataSet.integer(Tag.InstanceNumber).orElse(1L).intValue());
    }

    @Override
    public RecordingHeader header() {
        return header;
    }

    @Override
    public Optional<Block> next() throws IOException {
        int frames =
                (int)
                        Math.min(
                                window.capacity() / waveform.frameBytes(),
                                waveform.samples() - position);
        if (frames == 0) {
            return Optional.empty();
        }
        channel.position(waveform.offset() + position * waveform.frameBytes());
        if (!ChannelBytes.fill(window.clear().limit(frames * waveform.frameBytes()), channel)) {
            throw new RecordingException("The waveform data of the DICOM object end early.");
        }
        var block = new Block(position, decode(window.flip(), frames));
        position += frames;
        return Optional.of(block);
    }

    /** Channels alternate within a sample, PS3.3 C.10.9.1.7. */
    private int[][] decode(ByteBuffer bytes, int frames) {
        var samples = new int[waveform.leads().size()][frames];
        for (int i = 0; i < frames; i++) {
            for (int[] lead : samples) {
                lead[i] = waveform.coding().next(bytes, waveform.padding());
            }
        }
        return samples;
    }

    @Override
    public boolean marksMissing() {
        return waveform.padding().isPresent();
    }

    @Override
    public List<Beat> referenceBeats() {
        return List.of();
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
