package dev.isoline.hl7v2fhir.datatype;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.zone.ZoneOffsetTransition;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * DTM (HL7 v2.5.1 ch. 2.A.22): {@code YYYY[MM[DD[HH[MM[SS[.S[S[S[S]]]]]]]]][+/-ZZZZ]}. Its
 * precision is the number of digits sent.
 *
 * @param date digits up to the day
 * @param time wall clock; null when the text has no hour
 * @param offset as sent; null when the text has none
 */
record Dtm(String date, LocalDateTime time, ZoneOffset offset) {

    private static final Pattern SHAPE =
            Pattern.compile(
                    "(\\d{4}(?:\\d{2}(?:\\d{2})?)?)(?:(\\d{2})(?:(\\d{2})(?:(\\d{2})(?:\\.(\\d{1,4}))?)?)?)?"
                            + "([+-]\\d{4})?");

    /** Empty when the text is not of that shape or names no day of the calendar. */
    static Optional<Dtm> parse(String text) {
        Matcher matcher = SHAPE.matcher(text);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        try {
            return Optional.of(read(matcher));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    private static Dtm read(Matcher matcher) {
        String date = matcher.group(1);
        LocalDate day = firstDay(date);
        LocalDateTime time = matcher.group(2) == null ? null : time(day, matcher);
        String offset = matcher.group(6);
        return new Dtm(date, time, offset == null ? null : ZoneOffset.of(offset));
    }

    private static LocalDate firstDay(String date) {
        int year = Integer.parseInt(date.substring(0, 4));
        if (year == 0) {
            throw new DateTimeException("year 0000");
        }
        int month = date.length() > 4 ? Integer.parseInt(date.substring(4, 6)) : 1;
        return LocalDate.of(
                year, month, date.length() > 6 ? Integer.parseInt(date.substring(6)) : 1);
    }

    private static LocalDateTime time(LocalDate day, Matcher matcher) {
        return day.atTime(
                        number(matcher.group(2)),
                        number(matcher.group(3)),
                        number(matcher.group(4)))
                .withNano(nanos(matcher.group(5)));
    }

    private static int number(String digits) {
        return digits == null ? 0 : Integer.parseInt(digits);
    }

    private static int nanos(String fraction) {
        return fraction == null ? 0 : Integer.parseInt((fraction + "00000000").substring(0, 9));
    }

    /** {@code YYYY}, {@code YYYY-MM} or {@code YYYY-MM-DD}; no zone is applied. */
    String isoDate() {
        return switch (date.length()) {
            case 4 -> date;
            case 6 -> date.substring(0, 4) + "-" + date.substring(4);
            default -> date.substring(0, 4) + "-" + date.substring(4, 6) + "-" + date.substring(6);
        };
    }

    /** FHIR dateTime; a time without an offset is taken as wall clock of the zone. */
    String isoDateTime(ZoneId zone) {
        if (time == null) {
            return isoDate();
        }
        return time.format(java.time.format.DateTimeFormatter.ISO_LOCAL_DATE_TIME)
                + (offset == null ? offsetBefore(zone) : offset);
    }

    /**
     * Where the wall clock is skipped or repeated by daylight saving, the offset in force just
     * before counts: the digits stay as sent, and the first of two possible instants is meant.
     */
    private ZoneOffset offsetBefore(ZoneId zone) {
        ZoneOffsetTransition transition = zone.getRules().getTransition(time);
        return transition == null ? zone.getRules().getOffset(time) : transition.getOffsetBefore();
    }
}
