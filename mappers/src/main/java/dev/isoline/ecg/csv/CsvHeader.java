package dev.isoline.ecg.csv;

import dev.isoline.ecg.Lead;
import dev.isoline.ecg.Microvolts;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.RecordingHeader.Identity;
import java.io.IOException;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * What stands before the samples: lines {@code # key: value}, then the names of the columns.
 *
 * @param timed whether the first column is a time in seconds
 * @param names of the leads
 * @param values by key; a comment that is no declaration is not among them
 */
record CsvHeader(boolean timed, List<String> names, Map<String, String> values) {

    private static final Pattern DECLARATION =
            Pattern.compile("#\\s*([A-Za-z][A-Za-z-]*)\\s*:\\s*(.*?)\\s*");
    private static final Pattern RATE = Pattern.compile("(?m)^\\ufeff?#\\s*hz\\s*:");
    private static final Pattern NUMBER = Pattern.compile("\\d{1,9}(?:\\.\\d{1,9})?");
    private static final String TIME = "time";
    private static final double FASTEST_HZ = 100_000;
    private static final int MOST_LEADS = 64;
    private static final int MOST_LINES = 1_000;
    private static final int BITS = 16;

    /** Whether a text that begins so declares a sampling frequency before its columns. */
    static boolean begins(String text) {
        return (text.startsWith("#") || text.startsWith("\ufeff#")) && RATE.matcher(text).find();
    }

    static CsvHeader read(CsvLines lines) throws IOException {
        var values = new HashMap<String, String>();
        for (String line = lines.next(); line != null; line = lines.next()) {
            var declaration = DECLARATION.matcher(line);
            if (declaration.matches()) {
                values.put(declaration.group(1).toLowerCase(Locale.ROOT), declaration.group(2));
            } else if (!line.isBlank() && !line.startsWith("#")) {
                return of(line, values);
            }
            if (lines.number() > MOST_LINES) {
                break;
            }
        }
        throw new RecordingException("The CSV file does not name its columns.");
    }

    private static CsvHeader of(String columns, Map<String, String> values)
            throws RecordingException {
        var names = Arrays.stream(columns.split(",", -1)).map(String::strip).toList();
        boolean timed = names.get(0).equalsIgnoreCase(TIME);
        var leads = names.subList(timed ? 1 : 0, names.size());
        if (leads.isEmpty() || leads.size() > MOST_LEADS || leads.contains("")) {
            throw new RecordingException(
                    "The CSV file has to name 1 to 64 leads in the line before the samples.");
        }
        var header = new CsvHeader(timed, leads, Map.copyOf(values));
        header.check();
        return header;
    }

    private void check() throws RecordingException {
        if (!(hz() > 0 && hz() <= FASTEST_HZ)) {
            throw new RecordingException(
                    "The CSV file declares a sampling frequency no ECG is recorded with.");
        }
        if (Microvolts.per(unit()).isEmpty()) {
            throw new RecordingException("The CSV file declares a unit that is no voltage.");
        }
        if (!(resolution() > 0)) {
            throw new RecordingException("The CSV file declares a resolution that is no number.");
        }
        if (rows() < 0) {
            throw new RecordingException("The CSV file declares a number of rows that is none.");
        }
        start();
    }

    double hz() {
        return number("hz");
    }

    private double number(String key) {
        String text = value(key);
        return NUMBER.matcher(text).matches() ? Double.parseDouble(text) : Double.NaN;
    }

    private String unit() {
        return values.getOrDefault("unit", "uV");
    }

    /** Of a sample, in the unit; a microvolt where the header declares none. */
    double resolution() {
        return values.containsKey("resolution")
                ? number("resolution")
                : 1 / Microvolts.per(unit()).orElse(1);
    }

    /** Rows announced; 0 where the header does not say. */
    long rows() {
        String text = values.getOrDefault("rows", "0");
        return text.matches("\\d{1,12}") ? Long.parseLong(text) : -1;
    }

    Optional<LocalDateTime> start() throws RecordingException {
        try {
            return Optional.ofNullable(values.get("start")).map(LocalDateTime::parse);
        } catch (DateTimeException e) {
            throw new RecordingException(
                    "The CSV file declares a start that is no local time as"
                            + " 2026-10-24T09:30:00.");
        }
    }

    List<Lead> leads() {
        double unit = Microvolts.per(unit()).orElse(0);
        return names.stream().map(name -> new Lead(name, resolution() * unit, 0, BITS)).toList();
    }

    Identity identity() throws RecordingException {
        String sex = value("sex");
        return new Identity(
                value("patient"),
                value("family"),
                value("given"),
                birthDate(),
                sex.matches("[MF]") ? sex : "",
                value("order"));
    }

    private String birthDate() throws RecordingException {
        String text = value("birth-date");
        try {
            return text.isEmpty() ? "" : LocalDate.parse(text).toString();
        } catch (DateTimeException e) {
            throw new RecordingException(
                    "The CSV file declares a birth date that is no date as 1951-05-02.");
        }
    }

    String value(String key) {
        return values.getOrDefault(key, "");
    }
}
