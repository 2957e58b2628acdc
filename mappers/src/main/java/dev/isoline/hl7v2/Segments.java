package dev.isoline.hl7v2;

import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import dev.isoline.order.Problem.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * The segments of a message, HL7 v2.5.1 ch. 2.5.1. A segment ends with CR, and so do senders that
 * use LF or CR LF; the last end may be missing. A line that begins with no segment name is a broken
 * segment before it, never a line to skip.
 */
final class Segments {

    private static final Pattern LINE_END = Pattern.compile("\r\n|\r|\n");
    private static final Pattern NAME = Pattern.compile("[A-Z][A-Z0-9]{2}");

    private Segments() {}

    static List<String> split(String text, char fieldSeparator) {
        var segments = new ArrayList<String>();
        for (String line : LINE_END.split(text)) {
            if (isSegment(line, fieldSeparator)) {
                segments.add(line);
                refuseControls(segments, line);
            } else if (!line.isBlank()) {
                throw broken(segments);
            }
        }
        return segments;
    }

    /** HL7 v2 text holds displayable characters only (ch. 2.7); a tab is tolerated. */
    private static boolean holdsControl(String line) {
        return line.chars().anyMatch(c -> c < ' ' && c != '\t' || c == 0x7F);
    }

    private static boolean isSegment(String line, char fieldSeparator) {
        return line.length() >= 3
                && NAME.matcher(line.substring(0, 3)).matches()
                && (line.length() == 3 || line.charAt(3) == fieldSeparator);
    }

    private static void refuseControls(List<String> segments, String line) {
        if (holdsControl(line)) {
            throw at(segments, name(line) + " holds a control character.");
        }
    }

    private static ContentError broken(List<String> before) {
        String name = before.isEmpty() ? "MSH" : name(before.get(before.size() - 1));
        return at(
                before,
                "A line after "
                        + name
                        + " does not begin with a segment name; a line break inside a field must be"
                        + " escaped.");
    }

    private static ContentError at(List<String> before, String text) {
        String name = before.isEmpty() ? "MSH" : name(before.get(before.size() - 1));
        long sequence = Math.max(1, before.stream().filter(s -> name(s).equals(name)).count());
        return new ContentError(Problem.error(Kind.SEQUENCE, name + "[" + sequence + "]", text));
    }

    static void require(List<String> segments, List<String> names) {
        for (String name : names) {
            if (segments.stream().noneMatch(segment -> name(segment).equals(name))) {
                throw new ContentError(
                        Problem.error(Kind.SEQUENCE, name, "The " + name + " segment is missing."));
            }
        }
    }

    static String name(String segment) {
        return segment.substring(0, 3);
    }
}
