package dev.isoline.ecg.ishne;

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
import java.nio.channels.ReadableByteChannel;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A recording in ISHNE Holter 1.0, with the beats of the annotation file beside it: the one file
 * there that begins as such.
 */
public final class IshneRecording implements Recording {

    private static final byte[] MAGIC = "ISHNE1.0".getBytes(StandardCharsets.US_ASCII);
    private static final int WINDOW = 1 << 16;
    private static final short NO_SAMPLE = Short.MIN_VALUE;

    private final RecordingFiles files;
    private final ReadableByteChannel channel;
    private final Faults faults;
    private final IshneHeader ishne;
    private final RecordingHeader header;
    private final ByteBuffer window;
    private long at;

    private IshneRecording(
            RecordingFiles files, ReadableByteChannel channel, long size, Damage damage)
            throws IOException {
        this.files = files;
        this.channel = channel;
        faults = new Faults(damage);
        ishne = IshneHeader.read(channel);
        if (ishne.computed() != ishne.checksum()) {
            faults.found("The ISHNE header does not have the checksum it gives.");
        }
        if (ishne.hz() == 0) {
            throw new RecordingException("The ISHNE header gives no sampling frequency.");
        }
        header = header(new IshneLength(ishne, size).samples(faults));
        ChannelBytes.skip(ishne.dataOffset() - ishne.headerBytes(), channel);
        window =
                ByteBuffer.allocateDirect(WINDOW / ishne.frameBytes() * ishne.frameBytes())
                        .order(ByteOrder.LITTLE_ENDIAN);
    }

    /** Whether a file that begins so is an ISHNE recording. */
    public static boolean begins(byte[] start) {
        return start.length >= MAGIC.length
                && Arrays.equals(start, 0, MAGIC.length, MAGIC, 0, MAGIC.length);
    }

    /** Opens the named file; the channel is closed again when it is no such recording. */
    public static IshneRecording open(RecordingFiles files, String name, Damage damage)
            throws IOException {
        var channel = files.open(name);
        try {
            return new IshneRecording(files, channel, files.size(name), damage);
        } catch (IOException | RuntimeException e) {
            channel.close();
            throw e;
        }
    }

    private RecordingHeader header(long samples) {
        if (ishne.pacemaker() > 0) {
            faults.note("The ISHNE header says that the patient has a pacemaker.");
        }
        return new RecordingHeader(
                "ISHNE 1.0",
                identity(),
                start(),
                ishne.hz(),
                IshneLeads.of(ishne),
                samples,
                ishne.recorder(),
                List.of());
    }

    private RecordingHeader.Identity identity() {
        String sex = ishne.sex() == 1 ? "M" : ishne.sex() == 2 ? "F" : "";
        return new RecordingHeader.Identity(
                ishne.id(),
                ishne.lastName(),
                ishne.firstName(),
                date(ishne.birth()).map(LocalDate::toString).orElse(""),
                sex,
                "");
    }

    private Optional<LocalDateTime> start() {
        var time = ishne.startTime();
        try {
            return date(ishne.recordDate())
                    .map(day -> day.atTime(time.first(), time.second(), time.third()));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    /** Empty for what is no date, such as zeros where none is known. */
    private static Optional<LocalDate> date(IshneHeader.Triple date) {
        try {
            return date.third() < 1
                    ? Optional.empty()
                    : Optional.of(LocalDate.of(date.third(), date.second(), date.first()));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    @Override
    public RecordingHeader header() {
        return header.noting(faults.notes());
    }

    @Override
    public Optional<Block> next() throws IOException {
        int count = (int) Math.min(window.capacity() / ishne.frameBytes(), header.samples() - at);
        if (count == 0) {
            return Optional.empty();
        }
        if (!ChannelBytes.fill(window.clear().limit(count * ishne.frameBytes()), channel)) {
            throw new RecordingException("The ISHNE file ended while it was read.");
        }
        var block = new Block(at, samples(window.flip(), count));
        at += count;
        return Optional.of(block);
    }

    /** The leads alternate; -32768 says that a lead gave no signal. */
    private int[][] samples(ByteBuffer bytes, int count) {
        var stored = new short[count * ishne.leads().size()];
        bytes.asShortBuffer().get(stored);
        var samples = new int[ishne.leads().size()][count];
        for (int lead = 0; lead < samples.length; lead++) {
            for (int i = 0, from = lead; i < count; i++, from += samples.length) {
                samples[lead][i] = stored[from] == NO_SAMPLE ? Block.MISSING : stored[from];
            }
        }
        return samples;
    }

    @Override
    public List<Beat> referenceBeats() throws IOException {
        for (String name : files.names()) {
            try (var annotations = files.open(name)) {
                if (IshneAnnotations.begins(annotations)) {
                    return read(name);
                }
            }
        }
        return List.of();
    }

    private List<Beat> read(String name) throws IOException {
        try (var annotations = files.open(name)) {
            return IshneAnnotations.read(annotations, faults);
        } catch (RecordingException e) {
            faults.found(e.getMessage());
            return List.of();
        }
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
