package dev.isoline.ecg.edf;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Block;
import dev.isoline.ecg.ChannelBytes;
import dev.isoline.ecg.DiaryEntry;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.RecordingFiles;
import dev.isoline.ecg.RecordingHeader;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.ShortBuffer;
import java.nio.channels.ReadableByteChannel;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A recording in EDF, EDF+C or EDF+D. A gap of EDF+D is a gap between two blocks, placed by the
 * time the data record begins with, to the nearest sample.
 */
public final class EdfRecording implements Recording {

    /** Bytes that are read at a time, unless one data record has more. */
    private static final int WINDOW = 1 << 16;

    private static final double LONGEST_SECONDS = 366 * 86_400.0;

    private final ReadableByteChannel channel;
    private final EdfHeader edf;
    private final EdfLeads leads;
    private final RecordingHeader header;
    private final int recordBytes;
    private final ByteBuffer window;
    private final ShortBuffer stored;
    private final short[] row;
    private final BigDecimal firstOnset;
    private final long records;
    private final EdfDiary diary;
    private long read;
    private int held;
    private int used;
    private long end;

    private EdfRecording(ReadableByteChannel channel, long size) throws IOException {
        var notes = new ArrayList<String>();
        this.channel = channel;
        edf = readHeader(channel);
        leads = new EdfLeads(edf.signals(), notes);
        records = new EdfLength(edf, size).records(notes);
        recordBytes = edf.recordBytes();
        window = window(recordBytes, Math.max(1, WINDOW / recordBytes));
        stored = window.asShortBuffer();
        row = new short[perRecord()];
        diary = new EdfDiary(edf.signals());
        readOn();
        firstOnset = edf.isPlus() ? onset(0) : BigDecimal.ZERO;
        header = header(notes);
    }

    /** Whether a file that begins so is an EDF file. */
    public static boolean begins(byte[] start) {
        int length = EdfHeader.MAGIC.length;
        return start.length >= length
                && Arrays.equals(start, 0, length, EdfHeader.MAGIC, 0, length);
    }

    /** Opens the named file; the channel is closed again when it is no such recording. */
    public static EdfRecording open(RecordingFiles files, String name) throws IOException {
        var channel = files.open(name);
        try {
            return new EdfRecording(channel, files.size(name));
        } catch (IOException | RuntimeException e) {
            channel.close();
            throw e;
        }
    }

    private static ByteBuffer window(int recordBytes, int records) {
        return ByteBuffer.allocateDirect(recordBytes * records).order(ByteOrder.LITTLE_ENDIAN);
    }

    private static EdfHeader readHeader(ReadableByteChannel channel) throws IOException {
        var fixed = ChannelBytes.upTo(EdfHeader.PART, channel);
        if (fixed.limit() < EdfHeader.PART) {
            throw EdfLength.shortHeader(EdfHeader.PART - fixed.limit());
        }
        int bytes = EdfHeader.signalCount(fixed) * EdfHeader.PART;
        var signals = ChannelBytes.upTo(bytes, channel);
        if (signals.limit() < bytes) {
            throw EdfLength.shortHeader(bytes - signals.limit());
        }
        return EdfHeader.read(
                ByteBuffer.allocate(EdfHeader.PART + bytes).put(fixed).put(signals).flip());
    }

    private RecordingHeader header(List<String> notes) {
        var who = new EdfIdentification(edf, notes);
        return new RecordingHeader(
                edf.format(),
                who.identity(),
                who.start().map(this::exact),
                hz().doubleValue(),
                leads.leads(),
                edf.isDiscontinuous() ? -1 : records * perRecord(),
                who.equipment(),
                List.copyOf(notes));
    }

    private LocalDateTime exact(LocalDateTime start) {
        return start.plusNanos(firstOnset.movePointRight(9).longValue());
    }

    private BigDecimal hz() {
        return BigDecimal.valueOf(perRecord()).divide(edf.recordSeconds(), MathContext.DECIMAL64);
    }

    private int perRecord() {
        return leads.signals().get(0).samples();
    }

    /** Fills the window with the next data records, as many as it has room for. */
    private void readOn() throws IOException {
        held = (int) Math.min(window.capacity() / recordBytes, records - read);
        used = 0;
        if (!ChannelBytes.fill(window.clear().limit(held * recordBytes), channel)) {
            throw EdfLength.missing(
                    edf.bytes() + records * recordBytes,
                    edf.bytes() + read * recordBytes + window.position());
        }
        read += held;
        noteDiary();
    }

    /** What stands after the time-keeping annotation; most data records have nothing there. */
    private void noteDiary() {
        if (edf.isPlus()) {
            for (int record = 0; record < held; record++) {
                diary.add(window, record * recordBytes);
            }
        }
    }

    /** Time-keeping annotation: the first list of the first annotation signal (EDF+, 2.2.4). */
    private BigDecimal onset(int record) throws RecordingException {
        int start = record * recordBytes;
        for (var signal : edf.signals()) {
            if (signal.isAnnotations()) {
                var lists =
                        TimestampedAnnotations.read(
                                window.slice(start + 2 * signal.offset(), 2 * signal.samples()));
                if (!lists.isEmpty()) {
                    return lists.get(0).onset();
                }
            }
        }
        if (edf.isDiscontinuous()) {
            throw new RecordingException(
                    "Data record " + number(record) + " of the EDF+D file gives no time.");
        }
        return BigDecimal.ZERO;
    }

    /** A data record of the window, counted in the file and from 1. */
    private long number(int record) {
        return read - held + record + 1;
    }

    @Override
    public RecordingHeader header() {
        return header;
    }

    @Override
    public Optional<Block> next() throws IOException {
        if (used == held && read < records) {
            readOn();
        }
        if (used == held) {
            return Optional.empty();
        }
        int from = used;
        long first = position(from);
        do {
            used++;
            end = first + (long) (used - from) * perRecord();
        } while (used < held && position(used) == end);
        return Optional.of(new Block(first, decode(from, used)));
    }

    private int[][] decode(int from, int to) {
        var samples = new int[leads.signals().size()][(to - from) * perRecord()];
        for (int record = from, at = 0; record < to; record++, at += row.length) {
            for (int lead = 0; lead < samples.length; lead++) {
                int start = record * recordBytes / 2 + leads.signals().get(lead).offset();
                stored.get(start, row);
                for (int i = 0; i < row.length; i++) {
                    samples[lead][at + i] = row[i];
                }
            }
        }
        return samples;
    }

    /** Where the data record begins; without a time of its own it follows the one before. */
    private long position(int record) throws RecordingException {
        if (!edf.isDiscontinuous()) {
            return end;
        }
        long position =
                onset(record)
                        .subtract(firstOnset)
                        .multiply(hz())
                        .setScale(0, RoundingMode.HALF_UP)
                        .longValue();
        if (position / hz().doubleValue() > LONGEST_SECONDS) {
            throw new RecordingException(
                    "Data record "
                            + number(record)
                            + " of the EDF+D file begins more than a year after its start.");
        }
        if (position < end - 1) {
            throw new RecordingException(
                    "Data record "
                            + number(record)
                            + " of the EDF+D file begins before the one before ends.");
        }
        return Math.max(position, end);
    }

    /** Times are those of the header's clock; the recording begins at its first data record. */
    @Override
    public List<DiaryEntry> diary() {
        return diary.entries(firstOnset, hz());
    }

    /** Every value of the digital range is a sample. */
    @Override
    public boolean marksMissing() {
        return false;
    }

    /** EDF+ has no standard text for a beat: annotations of other meaning are not taken for one. */
    @Override
    public List<Beat> referenceBeats() {
        return List.of();
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
