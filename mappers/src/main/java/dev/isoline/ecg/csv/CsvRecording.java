package dev.isoline.ecg.csv;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Block;
import dev.isoline.ecg.Damage;
import dev.isoline.ecg.Faults;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.RecordingFiles;
import dev.isoline.ecg.RecordingHeader;
import java.io.IOException;
import java.nio.channels.ReadableByteChannel;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A recording as rows of text with a declared header (docs/formats.md, "CSV"). Where the rows have
 * times, a jump in them is a gap.
 */
public final class CsvRecording implements Recording {

    private static final int BLOCK = 4096;
    private static final double LONGEST_SECONDS = 366 * 86_400.0;

    private final ReadableByteChannel channel;
    private final CsvLines lines;
    private final Faults faults;
    private final CsvHeader csv;
    private final RecordingHeader header;
    private final double firstTime;
    private CsvRow ahead;
    private long aheadAt;
    private long rows;

    private CsvRecording(ReadableByteChannel channel, Damage damage) throws IOException {
        this.channel = channel;
        faults = new Faults(damage);
        lines = new CsvLines(channel);
        csv = CsvHeader.read(lines);
        ahead = nextRow();
        if (ahead == null) {
            throw new RecordingException("The CSV file holds no samples.");
        }
        firstTime = Double.isNaN(ahead.time()) ? 0 : ahead.time();
        header = header(Math.round(firstTime * 1e9));
    }

    /** Whether a text that begins so is a CSV file with a declared header. */
    public static boolean begins(byte[] start) {
        return CsvHeader.begins(new String(start, StandardCharsets.UTF_8));
    }

    /** Opens the named file; the channel is closed again when it is no such recording. */
    public static CsvRecording open(RecordingFiles files, String name, Damage damage)
            throws IOException {
        var channel = files.open(name);
        try {
            return new CsvRecording(channel, damage);
        } catch (IOException | RuntimeException e) {
            channel.close();
            throw e;
        }
    }

    @Override
    public RecordingHeader header() {
        return header.noting(faults.notes());
    }

    /** The recording begins with its first row, whatever time that has. */
    private RecordingHeader header(long nanos) throws RecordingException {
        return new RecordingHeader(
                "CSV",
                csv.identity(),
                csv.start().map(start -> start.plusNanos(nanos)),
                csv.hz(),
                csv.leads(),
                csv.timed() || csv.rows() == 0 ? -1 : csv.rows(),
                csv.value("equipment"),
                List.of());
    }

    @Override
    public Optional<Block> next() throws IOException {
        if (ahead == null) {
            return Optional.empty();
        }
        long first = aheadAt;
        var samples = new int[csv.names().size()][BLOCK];
        int count = 0;
        while (ahead != null && count < BLOCK && aheadAt == first + count) {
            for (int lead = 0; lead < samples.length; lead++) {
                samples[lead][count] = ahead.samples()[lead];
            }
            count++;
            readOn(first + count);
        }
        for (int lead = 0; lead < samples.length; lead++) {
            samples[lead] = Arrays.copyOf(samples[lead], count);
        }
        return Optional.of(new Block(first, samples));
    }

    /** Looks at the next row that has a place on the time axis from {@code end} on. */
    private void readOn(long end) throws IOException {
        do {
            ahead = nextRow();
            aheadAt = ahead == null || !csv.timed() ? end : position(ahead, end);
        } while (aheadAt < end);
    }

    /** Before {@code end} where the row is left out. */
    private long position(CsvRow row, long end) throws RecordingException {
        if (Double.isNaN(row.time())) {
            return end;
        }
        double seconds = row.time() - firstTime;
        if (seconds > LONGEST_SECONDS) {
            faults.found(at("lies more than a year after the first"));
            return -1;
        }
        long position = (long) Math.rint(seconds * csv.hz());
        if (position < end) {
            faults.found(at("does not come after the one before"));
        }
        return position;
    }

    private String at(String fault) {
        return "The time of line " + lines.number() + " of the CSV file " + fault + ".";
    }

    /** Null at the end; a row that cannot be read is a fault, and missing samples. */
    private CsvRow nextRow() throws IOException {
        String line = lines.next();
        while (line != null && line.isBlank()) {
            line = lines.next();
        }
        if (line == null) {
            checkRows();
            return null;
        }
        rows++;
        if (!lines.ended() && csv.rows() == 0) {
            faults.note("The last line of the CSV file has no end; it may be cut off.");
        }
        try {
            return noted(CsvRow.parse(line, csv, lines.number()));
        } catch (RecordingException e) {
            faults.found(e.getMessage());
            return missing();
        }
    }

    /** Of a row whose time is not known, its place is not either: it follows the one before. */
    private CsvRow missing() {
        var samples = new int[csv.names().size()];
        Arrays.fill(samples, Block.MISSING);
        return new CsvRow(Double.NaN, samples, false);
    }

    private CsvRow noted(CsvRow row) {
        if (row.rounded()) {
            faults.note("Values that are no multiple of the declared resolution were rounded.");
        }
        return row;
    }

    private void checkRows() throws RecordingException {
        if (csv.rows() > 0 && rows != csv.rows()) {
            faults.found(
                    "The CSV file declares "
                            + csv.rows()
                            + " rows and has "
                            + rows
                            + (rows < csv.rows()
                                    ? ": " + (csv.rows() - rows) + " are missing."
                                    : "."));
        }
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
