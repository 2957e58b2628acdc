package dev.isoline.ecgdicom.module;

import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;

/** Dates and times as VR DA, TM and DT have them, PS3.5 6.2. */
final class DicomTime {

    private static final DateTimeFormatter DA = of("yyyyMMdd");
    private static final DateTimeFormatter TM = of("HHmmss.SSSSSS");
    private static final DateTimeFormatter DT = of("yyyyMMddHHmmss.SSSSSSxx");
    private static final DateTimeFormatter OFFSET = of("xx");

    private DicomTime() {}

    /** Empty where the time is unknown. */
    static String date(Optional<OffsetDateTime> time) {
        return time.map(DA::format).orElse("");
    }

    static String time(Optional<OffsetDateTime> time) {
        return time.map(TM::format).orElse("");
    }

    static String dateTime(Optional<OffsetDateTime> time) {
        return time.map(DT::format).orElse("");
    }

    /** {@code +0000} for UTC; PS3.3 C.12.1.1.8. */
    static String offset(Optional<OffsetDateTime> time) {
        return time.map(OFFSET::format).orElse("");
    }

    private static DateTimeFormatter of(String pattern) {
        return DateTimeFormatter.ofPattern(pattern, Locale.ROOT);
    }
}
