package dev.isoline.gateway;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * An acknowledgement, read without the gateway's own code.
 *
 * @param text the segments, each ended by CR
 */
record Answer(String text) {

    static Answer of(String text) {
        return new Answer(text);
    }

    /** MSA-1 of each acknowledgement. */
    String code() {
        return segments("MSA").map(s -> field(s, 1)).collect(Collectors.joining(" "));
    }

    String answersControlId() {
        return segments("MSA").map(s -> field(s, 2)).collect(Collectors.joining(" "));
    }

    /** Place and code of each error, such as {@code PID-5 101}. */
    List<String> errors() {
        return places("E");
    }

    List<String> warnings() {
        return places("W");
    }

    Stream<String> segments(String name) {
        return Arrays.stream(text.split("\r")).filter(s -> s.startsWith(name));
    }

    private List<String> places(String severity) {
        return segments("ERR")
                .filter(s -> field(s, 4).equals(severity))
                .map(s -> place(field(s, 2)) + " " + component(field(s, 3), 0))
                .toList();
    }

    /** ERR-2, data type ERL: segment, sequence, field. */
    private String place(String location) {
        String segment = component(location, 0);
        String sequence = component(location, 1);
        String field = component(location, 2);
        String number = sequence.isEmpty() || sequence.equals("1") ? "" : "[" + sequence + "]";
        return segment + number + (field.isEmpty() ? "" : "-" + field);
    }

    private String field(String segment, int number) {
        String[] fields = segment.split(java.util.regex.Pattern.quote("" + text.charAt(3)), -1);
        return number < fields.length ? fields[number] : "";
    }

    private String component(String field, int index) {
        String[] parts = field.split(java.util.regex.Pattern.quote("" + text.charAt(4)), -1);
        return index < parts.length ? parts[index] : "";
    }
}
