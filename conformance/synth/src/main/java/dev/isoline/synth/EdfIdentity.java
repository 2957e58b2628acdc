package dev.isoline.synth;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/**
 * Whom an EDF+ file belongs to (EDF+ specification, 2.1.3.3 and 2.1.3.4).
 *
 * @param code patient code
 * @param sex {@code M} or {@code F}
 * @param name as in {@code Haagse_Harry}: family name first
 * @param orderNumber becomes the hospital administration code of the investigation
 * @param start local time at the patient
 */
public record EdfIdentity(
        String code,
        String sex,
        LocalDate birth,
        String name,
        String orderNumber,
        LocalDateTime start) {

    private static final DateTimeFormatter DATE =
            DateTimeFormatter.ofPattern("dd-MMM-yyyy", Locale.ENGLISH);

    String patientField() {
        return String.join(" ", word(code), sex, date(birth), word(name));
    }

    String recordingField() {
        return String.join(
                " ", "Startdate", date(start.toLocalDate()), word(orderNumber), "X", "Synthesiser");
    }

    private static String date(LocalDate date) {
        return DATE.format(date).toUpperCase(Locale.ENGLISH);
    }

    /** A space within a subfield is written as an underscore; an unknown one is X. */
    private static String word(String text) {
        return text.isBlank() ? "X" : text.replace(' ', '_');
    }
}
