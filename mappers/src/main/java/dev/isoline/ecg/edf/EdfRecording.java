package dev.isoline.ecg.edf;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Block;
import dev.isoline.ecg.ChannelBytes;
import dev.isoline.ecg.Damage;
import dev.isoline.ecg.DiaryEntry;
import dev.isoline.ecg.Faults;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.RecordingFiles;
import dev.isoline.ecg.RecordingHeader;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.channels.ReadableByteChannel;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/**
 * A recording in EDF, EDF+C, EDF+D, BDF, BDF+C or BDF+D. A gap of EDF+D is a gap between two
 * blocks, placed by the time the data record begins with, to the nearest sample.
 */
public final class EdfRecording implements Recording {

    private static final long LONGEST_SECONDS = 366 * 86_400L;
    private static final long LEFT_OUT = -1;

    private final ReadableByteChannel channel;
    private final Faults faults;
    private final EdfHeader edf;
    private final EdfLeads leads;
    private final EdfRecords records;
    private final EdfDiary diary;
    private final EdfClock clock;
    private final RecordingHeader header;
    private long[] positions = {};
    private int used;
    private long end;

    private EdfRecording(ReadableByteChannel channel, long size, Damage damage) throws IOException {
        this.channel = channel;
        faults = new Faults(damage);
        edf = readHeader(channel);
        leads = new EdfLeads(edf, faults);
        long count = new EdfLength(edf, size).records(faults);
        records = new EdfRecords(channel, edf, count, perRecord());
        diary = new EdfDiary(edf);
        records.readOn();
        clock =
                new EdfClock(
                        BigDecimal.valueOf(perRecord()),
                        edf.recordSeconds(),
                        edf.isPlus() ? onset(0).orElse(BigDecimal.ZERO) : BigDecimal.ZERO);
        header = header(count);
        place();
    }

    /** Whether a file that begins so is an EDF or BDF file. */
    public static boolean begins(byte[] start) {
        return EdfVersion.of(start).isPresent();
    }

    /** Opens the named file; the channel is closed again when it is no such recording. */
    public static EdfRecording open(RecordingFiles files, String name, Damage damage)
            throws IOException {
        var channel = files.open(name);
        try {
            return new EdfRecording(channel, files.size(name), damage);
        } catch (IOException | RuntimeException e) {
            channel.close();
            throw e;
        }
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

    private RecordingHeader header(long count) {
        var who = new EdfIdentification(edf, faults);
        return new RecordingHeader(
                edf.format(),
                who.identity(),
                who.start().map(this::exact),
                clock.hz(),
                leads.leads(),
                edf.isDiscontinuous() ? -1 : count * perRecord(),
                who.equipment(),
                List.of());
    }

    private LocalDateTime exact(LocalDateTime start) {
        return start.plusNanos(clock.first().movePointRight(9).longValue());
    }

    private int perRecord() {
        return leads.signals().get(0).samples();
    }

    /** Places the data records of the window in time and takes their notes. */
    private void place() throws RecordingException {
        used = 0;
        positions = new long[records.held()];
        long follows = end;
        for (int record = 0; record < positions.length; record++) {
            positions[record] = edf.isDiscontinuous() ? position(record, follows) : follows;
            if (positions[record] != LEFT_OUT) {
                follows = positions[record] + perRecord();
            }
            if (edf.isPlus()) {
                diary.add(records, record);
            }
        }
    }

    /** Where a data record of EDF+D begins; it may overlap the one before by a rounded sample. */
    private long position(int record, long follows) throws RecordingException {
        var onset = onset(record);
        if (onset.isEmpty()) {
            return leftOut(record, "gives no time");
        }
        long position = clock.position(onset.get());
        if (position > LONGEST_SECONDS * clock.hz()) {
            return leftOut(record, "begins more than a year after its start");
        }
        if (position < follows - 1) {
            return leftOut(record, "begins before the one before ends");
        }
        return Math.max(position, follows);
    }

    private long leftOut(int record, String why) throws RecordingException {
        faults.found(
                "Data record "
                        + records.number(record)
                        + " of the "
                        + edf.format()
                        + " file "
                        + why
                        + ".");
        return LEFT_OUT;
    }

    /** Time-keeping annotation: the first list of the first annotation signal (EDF+, 2.2.4). */
    private Optional<BigDecimal> onset(int record) throws RecordingException {
        for (var signal : edf.signals()) {
            if (edf.isAnnotations(signal)) {
                var onset = TimestampedAnnotations.onset(records.bytes(record, signal));
                if (onset.isPresent()) {
                    return onset;
                }
            }
        }
        return Optional.empty();
    }

    @Override
    public RecordingHeader header() {
        return header.noting(faults.notes());
    }

    @Override
    public Optional<Block> next() throws IOException {
        while (true) {
            if (used == positions.length) {
                if (!records.readOn()) {
                    return Optional.empty();
                }
                place();
            }
            int from = used++;
            if (positions[from] != LEFT_OUT) {
                return Optional.of(block(from));
            }
        }
    }

    /** As many data records of the window as follow one another. */
    private Block block(int from) {
        long first = positions[from];
        end = first + perRecord();
        while (used < positions.length && positions[used] == end) {
            used++;
            end += perRecord();
        }
        return new Block(first, decode(from, used));
    }

    private int[][] decode(int from, int to) {
        var samples = new int[leads.signals().size()][(to - from) * perRecord()];
        for (int record = from, at = 0; record < to; record++, at += perRecord()) {
            for (int lead = 0; lead < samples.length; lead++) {
                records.samples(record, leads.signals().get(lead), samples[lead], at);
            }
        }
        return samples;
    }

    /** Times are those of the header's clock; the recording begins at its first data record. */
    @Override
    public List<DiaryEntry> diary() {
        return diary.entries(clock);
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
