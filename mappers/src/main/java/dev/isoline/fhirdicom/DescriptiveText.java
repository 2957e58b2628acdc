package dev.isoline.fhirdicom;

import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Words that describe and identify nothing: made to fit a VR, where a number would be refused. */
final class DescriptiveText {

    static final int SH = 16;
    static final int LO = 64;
    static final int LT = 10240;

    private DescriptiveText() {}

    /** At most so many characters, without what parts the values of a text. */
    static String cut(String text, int longest) {
        String clean = text.replaceAll("[\\p{Cntrl}\\\\]", " ").strip();
        int end = Math.min(longest, clean.codePointCount(0, clean.length()));
        return clean.substring(0, clean.offsetByCodePoints(0, end)).strip();
    }

    /** What is there, one after the other. */
    static String joined(Stream<String> parts, String between) {
        return parts.filter(Objects::nonNull)
                .map(String::strip)
                .filter(part -> !part.isEmpty())
                .distinct()
                .collect(Collectors.joining(between));
    }
}
