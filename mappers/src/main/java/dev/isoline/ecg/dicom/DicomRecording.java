package dev.isoline.ecg.dicom;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.Tag;
import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Block;
import dev.isoline.ecg.ChannelBytes;
import dev.isoline.ecg.Damage;
import dev.isoline.ecg.Faults;
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
 * A recording in a DICOM waveform object, PS3.3 C.10.9: the multiplex groups that were recorded
 * together. Annotations of the object are not read.
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
    private final Faults faults;
    private final List<DicomWaveform> together;
    private final RecordingHeader header;
    private final ObjectUids uids;
    private final Optional<ZoneOffset> offset;
    private final int framesAtATime;
    private final ByteBuffer window;
    private long position;

    private DicomRecording(SeekableByteChannel channel, Damage damage) throws IOException {
        this.channel = channel;
        faults = new Faults(damage);
        var dataSet = Part10.read(channel, LIMITS).dataSet();
        together = DicomWaveform.of(dataSet, channel, faults);
        var said = new DicomHeader(dataSet);
        header = said.header(together);
        offset = said.offset();
        uids = uids(dataSet);
        int frame = together.stream().mapToInt(DicomWaveform::frameBytes).max().orElseThrow();
        framesAtATime = Math.max(1, WINDOW / frame);
        window = ByteBuffer.allocate(framesAtATime * frame).order(ByteOrder.LITTLE_ENDIAN);
    }

    /** Whether a file that begins so is a DICOM file (PS3.10 7.1). */
    public static boolean begins(byte[] start) {
        int end = PREAMBLE + DICM.length;
        return start.length >= end && Arrays.equals(start, PREAMBLE, end, DICM, 0, DICM.length);
    }

    /** Opens the named file; the channel is closed again when it is no such recording. */
    public static DicomRecording open(RecordingFiles files, String name, Damage damage)
            throws IOException {
        var channel = files.open(name);
        try {
            if (channel instanceof SeekableByteChannel seekable) {
                return new DicomRecording(seekable, damage);
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
        return header.noting(faults.notes());
    }

    @Override
    public Optional<Block> next() throws IOException {
        int frames = (int) Math.min(framesAtATime, header.samples() - position);
        if (frames == 0) {
            return Optional.empty();
        }
        var samples = new ArrayList<int[]>();
        for (var group : together) {
            samples.addAll(Arrays.asList(read(group, frames)));
        }
        var block = new Block(position, samples.toArray(int[][]::new));
        position += frames;
        return Optional.of(block);
    }

    private int[][] read(DicomWaveform group, int frames) throws IOException {
        channel.position(group.offset() + position * group.frameBytes());
        if (!ChannelBytes.fill(window.clear().limit(frames * group.frameBytes()), channel)) {
            throw new RecordingException("The waveform data of the DICOM object end early.");
        }
        return decode(group, window.flip(), frames);
    }

    /** Channels alternate within a sample, PS3.3 C.10.9.1.7. */
    private static int[][] decode(DicomWaveform group, ByteBuffer bytes, int frames) {
        var samples = new int[group.leads().size()][frames];
        for (int i = 0; i < frames; i++) {
            for (int[] lead : samples) {
                lead[i] = group.coding().next(bytes, group.padding());
            }
        }
        return samples;
    }

    @Override
    public boolean marksMissing() {
        return together.stream().anyMatch(group -> group.padding().isPresent());
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
