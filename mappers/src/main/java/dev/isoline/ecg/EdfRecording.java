package dev.isoline.ecg;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.ReadableByteChannel;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A recording in EDF, EDF+C or EDF+D. A gap of EDF+D is a gap between two blocks, placed by the
 * time the data record begins with, to the nearest sample.
 */
public final class EdfRecording implements Recording {

    private static final int BLOCK = 4096;
    private static final double LONGEST_SECONDS = 366 * 86_400.0;

    private final ReadableByteChannel channel;
    private final EdfHeader edf;
    private final EdfLeads leads;
    private final RecordingHeader header;
    private final ByteBuffer record;
    private final BigDecimal firstOnset;
    private final long records;
    private long read;
    private Block pending;

    private EdfRecording(ReadableByteChannel channel, long size) throws IOException {
        var notes = new ArrayList<String>();
        this.channel = channel;
        edf = readHeader(channel);
        leads = new EdfLeads(edf.signals(), notes);
        records = new EdfLength(edf, size).records(notes);
        record = ByteBuffer.allocate(edf.recordBytes()).order(ByteOrder.LITTLE_ENDIAN);
        readRecord();
        firstOnset = edf.isPlus() ? onset() : BigDecimal.ZERO;
        header = header(notes);
        pending = decode(0);
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

    private void readRecord() throws IOException {
        if (!ChannelBytes.fill(record.clear(), channel)) {
            throw EdfLength.missing(
                    edf.bytes() + records * edf.recordBytes(),
                    edf.bytes() + read * edf.recordBytes() + record.position());
        }
        read++;
    }

    /** Time-keeping annotation: the first list of the first annotation signal (EDF+, 2.2.4). */
    private BigDecimal onset() throws RecordingException {
        for (var signal : edf.signals()) {
            if (signal.isAnnotations()) {
                var lists =
                        TimestampedAnnotations.read(
                                record.slice(2 * signal.offset(), 2 * signal.samples()));
                if (!lists.isEmpty()) {
                    return lists.get(0).onset();
                }
            }
        }
        if (edf.isDiscontinuous()) {
            throw new RecordingException(
                    "Data record " + read + " of the EDF+D file gives no time.");
        }
        return BigDecimal.ZERO;
    }

    private Block decode(long first) {
        var samples = new int[leads.signals().size()][perRecord()];
        for (int lead = 0; lead < samples.length; lead++) {
            int at = 2 * leads.signals().get(lead).offset();
            for (int i = 0; i < samples[lead].length; i++) {
                samples[lead][i] = record.getShort(at + 2 * i);
            }
        }
        return new Block(first, samples);
    }

    @Override
    public RecordingHeader header() {
        return header;
    }

    @Override
    public Optional<Block> next() throws IOException {
        if (pending == null) {
            return Optional.empty();
        }
        var together = new ArrayList<Block>(List.of(pending));
        long length = pending.length();
        pending = following(pending.end());
        while (pending != null
                && pending.first() == together.get(together.size() - 1).end()
                && length + perRecord() <= BLOCK) {
            together.add(pending);
            length += perRecord();
            pending = following(pending.end());
        }
        return Optional.of(Block.join(together));
    }

    private Block following(long end) throws IOException {
        if (read == records) {
            return null;
        }
        readRecord();
        return decode(edf.isDiscontinuous() ? position(end) : end);
    }

    private long position(long end) throws RecordingException {
        long position =
                onset().subtract(firstOnset)
                        .multiply(hz())
                        .setScale(0, RoundingMode.HALF_UP)
                        .longValue();
        if (position / hz().doubleValue() > LONGEST_SECONDS) {
            throw new RecordingException(
                    "Data record "
                            + read
                            + " of the EDF+D file begins more than a year after its start.");
        }
        if (position < end - 1) {
            throw new RecordingException(
                    "Data record "
                            + read
                            + " of the EDF+D file begins before the one before ends.");
        }
        return Math.max(position, end);
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
