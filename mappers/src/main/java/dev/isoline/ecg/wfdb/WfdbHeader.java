package dev.isoline.ecg.wfdb;

import dev.isoline.ecg.ChannelBytes;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.RecordingFiles;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.channels.ReadableByteChannel;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A WFDB header file (header(5)): {@code name[/segments] signals [hz[/counter[(base)]] [samples
 * [hh:mm:ss [dd/mm/yyyy]]]]}, then one line per signal; {@code #} begins a comment line.
 *
 * @param name of the record
 * @param hz frames a second
 * @param frames samples per signal at one sample a frame; 0 when the header does not say
 * @param start when both base time and date are given
 * @param signals of an ordinary record
 * @param segments of a multi-segment record; empty otherwise
 */
record WfdbHeader(
        String name,
        double hz,
        long frames,
        Optional<LocalDateTime> start,
        List<WfdbSignal> signals,
        List<WfdbSegment> segments) {

    private static final Pattern RECORD =
            Pattern.compile(
                    "([\\w.-]+)(?:/(\\d+))?\\s+(\\d{1,4})"
                            + "(?:\\s+([\\d.]+(?:[eE]\\d)?)(?:/\\S+)?"
                            + "(?:\\s+(\\d{1,12})(?:\\s+(\\d[\\d:.]*)(?:\\s+(\\d+/\\d+/\\d+))?)?)?)?");
    private static final double DEFAULT_HZ = 250;
    private static final double FASTEST_HZ = 100_000;
    private static final int LONGEST = 8 << 20;
    private static final int MOST_SIGNALS = 256;
    private static final double LONGEST_SECONDS = 366 * 86_400.0;
    private static final int MOST_DIGITS = 5;

    static WfdbHeader read(ReadableByteChannel channel) throws IOException {
        var bytes = ChannelBytes.upTo(LONGEST, channel);
        var lines = lines(StandardCharsets.UTF_8.decode(bytes).toString());
        var record = lines.isEmpty() ? null : RECORD.matcher(lines.get(0));
        if (record == null || !record.matches()) {
            throw new RecordingException("The first line of the WFDB header cannot be read.");
        }
        boolean segmented = record.group(2) != null;
        var header =
                new WfdbHeader(
                        record.group(1),
                        hz(record.group(4)),
                        record.group(5) == null ? 0 : Long.parseLong(record.group(5)),
                        start(record),
                        segmented ? List.of() : signals(lines, Integer.parseInt(record.group(3))),
                        segmented ? segments(lines, record.group(2)) : List.of());
        header.checkLength(header.frames());
        return header;
    }

    /** The same with the length that the record gives whose segment it is. */
    WfdbHeader withFrames(long others) {
        return new WfdbHeader(name, hz, others, start, signals, segments);
    }

    void checkLength(long length) throws RecordingException {
        if (length / hz > LONGEST_SECONDS) {
            throw new RecordingException("The WFDB header announces more than a year.");
        }
    }

    /** The header in the named file. */
    static WfdbHeader read(RecordingFiles files, String name) throws IOException {
        try (var channel = files.open(name)) {
            return read(channel);
        }
    }

    boolean isSegmented() {
        return !segments.isEmpty();
    }

    /** Whether a file that begins so is a WFDB header. */
    static boolean begins(String text) {
        var lines = lines(text);
        return !lines.isEmpty() && RECORD.matcher(lines.get(0)).matches();
    }

    private static List<String> lines(String text) {
        return text.lines()
                .map(String::strip)
                .filter(line -> !line.isEmpty() && !line.startsWith("#"))
                .toList();
    }

    private static List<WfdbSignal> signals(List<String> lines, int count)
            throws RecordingException {
        if (count < 1 || count > MOST_SIGNALS) {
            throw new RecordingException(
                    "The WFDB header announces " + count + " signals; 1 to 256 are read.");
        }
        checkLines(lines, count, "signals");
        var signals = new ArrayList<WfdbSignal>();
        for (int i = 1; i <= count; i++) {
            signals.add(WfdbSignal.parse(lines.get(i), i));
        }
        return List.copyOf(signals);
    }

    private static List<WfdbSegment> segments(List<String> lines, String digits)
            throws RecordingException {
        int count = digits.length() > MOST_DIGITS ? 0 : Integer.parseInt(digits);
        if (count < 1) {
            throw new RecordingException(
                    "The WFDB header announces " + digits + " segments; 1 to 99999 are read.");
        }
        checkLines(lines, count, "segments");
        var segments = new ArrayList<WfdbSegment>();
        for (int i = 1; i <= count; i++) {
            segments.add(WfdbSegment.parse(lines.get(i), i));
        }
        return List.copyOf(segments);
    }

    /** More lines than announced are not read (header(5)). */
    private static void checkLines(List<String> lines, int count, String what)
            throws RecordingException {
        if (lines.size() <= count) {
            throw new RecordingException(
                    "The WFDB header announces "
                            + count
                            + " "
                            + what
                            + " and describes "
                            + (lines.size() - 1)
                            + ".");
        }
    }

    private static double hz(String text) throws RecordingException {
        double hz = text == null ? DEFAULT_HZ : number(text);
        if (!(hz > 0 && hz <= FASTEST_HZ)) {
            throw new RecordingException(
                    "The WFDB header gives a sampling frequency no ECG is recorded with.");
        }
        return hz;
    }

    private static double number(String text) {
        try {
            return Double.parseDouble(text);
        } catch (NumberFormatException e) {
            return Double.NaN;
        }
    }

    private static Optional<LocalDateTime> start(Matcher record) throws RecordingException {
        if (record.group(7) == null) {
            return Optional.empty();
        }
        try {
            var date = record.group(7).split("/");
            return Optional.of(
                    LocalDateTime.of(
                            LocalDate.of(n(date[2]), n(date[1]), n(date[0])),
                            time(record.group(6))));
        } catch (DateTimeException | NumberFormatException e) {
            throw new RecordingException("The base time of the WFDB header is no time.");
        }
    }

    /** {@code hh:mm:ss}, {@code mm:ss} or {@code ss}, seconds with decimals. */
    private static LocalTime time(String text) {
        var nanos = BigDecimal.ZERO;
        for (String part : text.split(":", 3)) {
            nanos = nanos.multiply(BigDecimal.valueOf(60)).add(new BigDecimal(part));
        }
        return LocalTime.ofNanoOfDay(nanos.movePointRight(9).longValue());
    }

    private static int n(String digits) {
        return Integer.parseInt(digits);
    }
}
