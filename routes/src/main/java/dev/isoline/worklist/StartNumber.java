package dev.isoline.worklist;

import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** A start as the number the ledger sorts by, {@code yyyymmddhhmmss}. */
final class StartNumber {

    private static final DateTimeFormatter FORM =
            DateTimeFormatter.ofPattern("uuuuMMddHHmmss", Locale.ROOT);

    private StartNumber() {}

    static long of(LocalDateTime start) {
        return Long.parseLong(FORM.format(start));
    }
}
