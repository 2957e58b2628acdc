package dev.isoline.ecg.edf;

import dev.isoline.ecg.Faults;
import dev.isoline.ecg.RecordingHeader;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Who, which order and when, out of an EDF header (EDF+ specification, 2.1.3.3 items 3 and 4): the
 * patient field {@code code sex dd-MMM-yyyy name}, the recording field {@code Startdate dd-MMM-yyyy
 * administration-code technician equipment}. {@code X} is unknown, an underscore is a space. The
 * order number is the administration code. Of the name, the part before a comma or the first space
 * is the family name, as in the specification's example {@code Haagse_Harry}.
 */
final class EdfIdentification {

    private static final Pattern PATIENT =
            Pattern.compile("(\\S+) ([MFX]) (\\d{1,2}-[A-Za-z]{3}-\\d{4}|X) (\\S+)(?: .*)?");
    private static final Pattern CLIPPED = Pattern.compile("(\\d\\d)\\D(\\d\\d)\\D(\\d\\d)");
    private static final Pattern DATE = Pattern.compile("(\\d{1,2})-([A-Za-z]{3})-(\\d{4})");
    private static final List<String> MONTHS =
            List.of(
                    "JAN", "FEB", "MAR", "APR", "MAY", "JUN", "JUL", "AUG", "SEP", "OCT", "NOV",
                    "DEC");
    private static final int CLIPPING_YEAR = 85;

    private final EdfHeader header;
    private final Faults faults;

    /** What cannot be read becomes a note. */
    EdfIdentification(EdfHeader header, Faults faults) {
        this.header = header;
        this.faults = faults;
    }

    RecordingHeader.Identity identity() {
        var patient = PATIENT.matcher(header.patient());
        if (!patient.matches()) {
            noteUnreadPatient();
            return new RecordingHeader.Identity("", "", "", "", "", recordingPart(2));
        }
        var name = known(patient.group(4)).split("\\s*,\\s*|\\s+", 2);
        return new RecordingHeader.Identity(
                known(patient.group(1)),
                known(name[0]),
                name.length > 1 ? known(name[1]) : "",
                birthDate(patient.group(3)),
                known(patient.group(2)),
                recordingPart(2));
    }

    private void noteUnreadPatient() {
        if (!header.patient().isEmpty()) {
            faults.note(
                    "The EDF patient field does not have the four parts of EDF+; no identity was"
                            + " taken from it.");
        }
    }

    private String birthDate(String text) {
        try {
            return text.equals("X") ? "" : date(text).toString();
        } catch (DateTimeException e) {
            faults.note("The birth date in the EDF patient field is no date and was left out.");
            return "";
        }
    }

    String equipment() {
        return recordingPart(4);
    }

    /** Only a recording field that begins with Startdate has parts. */
    private String recordingPart(int part) {
        var parts = header.recording().split(" ");
        return parts[0].equals("Startdate") && parts.length > part ? known(parts[part]) : "";
    }

    /** To the second; EDF+ gives the fraction in its first annotation. */
    Optional<LocalDateTime> start() {
        try {
            var time = CLIPPED.matcher(header.startTime());
            if (!time.matches()) {
                throw new DateTimeException("not hh.mm.ss");
            }
            return Optional.of(
                    LocalDateTime.of(date(), LocalTime.of(n(time, 1), n(time, 2), n(time, 3))));
        } catch (DateTimeException e) {
            faults.note(
                    "The start date or time in the EDF header is none; times are offsets only.");
            return Optional.empty();
        }
    }

    private LocalDate date() {
        var full = recordingPart(1);
        if (!full.isEmpty()) {
            return date(full);
        }
        var clipped = CLIPPED.matcher(header.startDate());
        if (!clipped.matches()) {
            throw new DateTimeException("not dd.mm.yy");
        }
        int year = n(clipped, 3);
        return LocalDate.of(
                year + (year >= CLIPPING_YEAR ? 1900 : 2000), n(clipped, 2), n(clipped, 1));
    }

    /** {@code dd-MMM-yyyy}, months in English whatever the locale. */
    private static LocalDate date(String text) {
        var date = DATE.matcher(text);
        if (!date.matches()) {
            throw new DateTimeException("not dd-MMM-yyyy");
        }
        int month = MONTHS.indexOf(date.group(2).toUpperCase(Locale.ROOT)) + 1;
        return LocalDate.of(n(date, 3), month, n(date, 1));
    }

    private static int n(java.util.regex.Matcher matcher, int group) {
        return Integer.parseInt(matcher.group(group));
    }

    private static String known(String part) {
        return part.equals("X") ? "" : part.replace('_', ' ').strip();
    }
}
