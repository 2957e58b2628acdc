package dev.isoline.cli;

import java.time.Duration;
import java.util.Locale;

/** Lines of a report for a person: headings, and names with values beside them. */
final class TextLines {

    private final StringBuilder text = new StringBuilder();

    static String format(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }

    /** Hours beyond a day run on: an offset, not a time of day. */
    static String time(Duration d) {
        return format("%02d:%02d:%02d", d.toHours(), d.toMinutesPart(), d.toSecondsPart());
    }

    static double seconds(Duration duration) {
        return duration.toNanos() / 1e9;
    }

    static String plain(double number) {
        return number == Math.rint(number) ? format("%.0f", number) : format("%s", number);
    }

    /** After an empty line. */
    void heading(String words) {
        line("");
        line(words);
    }

    void row(String name, String format, Object... values) {
        line(format("  %-26s %s", name, values.length == 0 ? format : format(format, values)));
    }

    void line(String line) {
        text.append(line.stripTrailing()).append(System.lineSeparator());
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
