package dev.isoline.conformance.validator;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The little of an HL7 v2 message in ER7 that can be read without a model of it (HL7 v2.5.1 ch.
 * 2.5): segments, fields, and MSH-18.
 */
public final class Er7 {

    /** Table 0211 as far as partners here use it; the empty value is common practice, no source. */
    private static final Map<String, Charset> TABLE_0211 =
            Map.of(
                    "", StandardCharsets.UTF_8,
                    "ASCII", StandardCharsets.US_ASCII,
                    "8859/1", StandardCharsets.ISO_8859_1,
                    "UNICODE UTF-8", StandardCharsets.UTF_8);

    private final List<String> segments;

    private Er7(String text) {
        this.segments = Arrays.stream(text.split("\r")).filter(s -> !s.isEmpty()).toList();
    }

    public static Er7 of(byte[] raw) {
        var ascii = new Er7(new String(raw, StandardCharsets.ISO_8859_1));
        return new Er7(new String(raw, ascii.charset()));
    }

    private Charset charset() {
        return TABLE_0211.getOrDefault(
                field("MSH", 18).split("~", 2)[0], StandardCharsets.ISO_8859_1);
    }

    public String text() {
        return String.join("\r", segments) + "\r";
    }

    public List<String> segments(String name) {
        return segments.stream().filter(s -> s.startsWith(name)).toList();
    }

    /** Field of the first segment of this name, empty when there is none. */
    public String field(String name, int number) {
        return first(name).map(segment -> field(segment, name, number)).orElse("");
    }

    /** MSH-1 is the separator itself, so the second part of MSH is MSH-2. */
    private static String field(String segment, String name, int number) {
        String[] parts = segment.split("\\" + segment.charAt(3));
        int at = name.equals("MSH") ? number - 1 : number;
        return at < parts.length ? parts[at] : "";
    }

    private Optional<String> first(String name) {
        return segments(name).stream().filter(s -> s.length() > 3).findFirst();
    }
}
