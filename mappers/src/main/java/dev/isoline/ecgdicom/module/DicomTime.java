package dev.isoline.ecgdicom.module;

import java.time.format.DateTimeFormatter;
import java.time.temporal.TemporalAccessor;
import java.util.Locale;

/** Dates and times as VR DA, TM and DT have them, PS3.5 6.2. */
final class DicomTime {

    private static final DateTimeFormatter DA = of("yyyyMMdd");
    private static final DateTimeFormatter TM = of("HHmmss.SSSSSS");
    private static final DateTimeFormatter DT = of("yyyyMMddHHmmss.SSSSSSxx");
    private static final DateTimeFormatter OFFSET = of("xx");

    private DicomTime() {}

    static String date(TemporalAccessor time) {
        return DA.format(time);
    }

    static String time(TemporalAccessor time) {
        return TM.format(time);
    }

    static String dateTime(TemporalAccessor time) {
        return DT.format(time);
    }

    /** {@code +0000} for UTC; PS3.3 C.12.1.1.8. */
    static String offset(TemporalAccessor time) {
        return OFFSET.format(time);
    }

    private static DateTimeFormatter of(String pattern) {
        return DateTimeFormatter.ofPattern(pattern, Locale.ROOT);
    }
}
