package dev.isoline.worklist;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A key of VR DA: one date or a range, PS3.4 C.2.2.2.1 and C.2.2.2.5.
 *
 * @param from null where the range has no beginning
 * @param to null where it has no end
 */
record DateKey(KeyForm form, LocalDate from, LocalDate to) {

    private static final Pattern FORM = Pattern.compile("(\\d{8})?( *- *)?(\\d{8})?");

    static DateKey of(int tag, String key) throws UnusableKey {
        Matcher parts = FORM.matcher(key);
        if (!parts.matches() || parts.group(1) == null && parts.group(3) == null) {
            throw fault(tag);
        }
        if (parts.group(2) == null && parts.group(3) != null) {
            throw fault(tag);
        }
        try {
            LocalDate from = date(parts.group(1));
            LocalDate to = parts.group(2) == null ? from : date(parts.group(3));
            return new DateKey(KeyForm.of(parts.group(2) != null, from, to), from, to);
        } catch (DateTimeException e) {
            throw fault(tag);
        }
    }

    boolean matches(LocalDate date) {
        return (from == null || !date.isBefore(from)) && (to == null || !date.isAfter(to));
    }

    boolean isReversed() {
        return from != null && to != null && to.isBefore(from);
    }

    /** A value of VR DA. */
    static LocalDate date(String text) {
        return text == null ? null : LocalDate.parse(text, DateTimeFormatter.BASIC_ISO_DATE);
    }

    private static UnusableKey fault(int tag) {
        return new UnusableKey(tag, "is neither a date nor a range of dates");
    }
}
