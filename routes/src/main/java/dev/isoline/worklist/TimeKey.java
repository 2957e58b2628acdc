package dev.isoline.worklist;

import java.time.LocalTime;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A key of VR TM: one time or a range, PS3.4 C.2.2.2.1 and C.2.2.2.5. One time stands for all it
 * leaves open: {@code 09} for the hour, {@code 0900} for the minute. A range begins and ends on the
 * full hour where it leaves the minutes open, and its last minute belongs to it.
 *
 * @param from null where the range has no beginning
 * @param to null where it has no end
 */
record TimeKey(KeyForm form, LocalTime from, LocalTime to) {

    private static final String TIME =
            "(?:([01]\\d|2[0-3])(?:([0-5]\\d)(?:([0-5]\\d|60)(?:\\.(\\d{1,6}))?)?)?)";
    private static final Pattern ONE = Pattern.compile(TIME);
    private static final Pattern RANGE = Pattern.compile("([\\d.]*) *- *([\\d.]*)");

    static TimeKey of(int tag, String key) throws UnusableKey {
        Matcher range = RANGE.matcher(key);
        if (!range.matches()) {
            Matcher one = parsed(tag, key);
            return new TimeKey(KeyForm.SINGLE, earliest(one), latest(one, 59));
        }
        if (range.group(1).isEmpty() && range.group(2).isEmpty()) {
            throw fault(tag);
        }
        LocalTime from = range.group(1).isEmpty() ? null : earliest(parsed(tag, range.group(1)));
        LocalTime to = range.group(2).isEmpty() ? null : latest(parsed(tag, range.group(2)), 0);
        return new TimeKey(KeyForm.of(true, from, to), from, to);
    }

    boolean matches(LocalTime time) {
        return (from == null || !time.isBefore(from)) && (to == null || !time.isAfter(to));
    }

    boolean isReversed() {
        return from != null && to != null && to.isBefore(from);
    }

    /** A value of VR TM. */
    static LocalTime time(String text) {
        Matcher one = ONE.matcher(text);
        return one.matches() ? earliest(one) : LocalTime.MIDNIGHT;
    }

    private static LocalTime earliest(Matcher time) {
        return LocalTime.of(part(time, 1, 0), part(time, 2, 0), second(time, 0), nano(time, "0"));
    }

    private static LocalTime latest(Matcher time, int openMinute) {
        return LocalTime.of(
                part(time, 1, 0), part(time, 2, openMinute), second(time, 59), nano(time, "9"));
    }

    /** A leap second is the last one of its minute. */
    private static int second(Matcher time, int open) {
        return Math.min(part(time, 3, open), 59);
    }

    private static int nano(Matcher time, String fill) {
        String fraction = time.group(4) == null ? "" : time.group(4);
        return Integer.parseInt(fraction + fill.repeat(9 - fraction.length()));
    }

    private static int part(Matcher time, int group, int open) {
        return time.group(group) == null ? open : Integer.parseInt(time.group(group));
    }

    private static Matcher parsed(int tag, String text) throws UnusableKey {
        Matcher one = ONE.matcher(text);
        if (!one.matches()) {
            throw fault(tag);
        }
        return one;
    }

    private static UnusableKey fault(int tag) {
        return new UnusableKey(tag, "is neither a time nor a range of times");
    }
}
