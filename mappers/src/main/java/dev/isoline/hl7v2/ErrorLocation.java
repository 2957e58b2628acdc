package dev.isoline.hl7v2;

import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Where a problem is, HL7 v2.5.1 ch. 2.A.28 (ERL), from {@code PID-8}, {@code PID-3.4}, {@code
 * PID-3[2].4} or {@code OBR[2]-4}.
 */
record ErrorLocation(
        String segment, String sequence, String field, String repetition, String component) {

    private static final Pattern FORM =
            Pattern.compile(
                    "([A-Z][A-Z0-9]{2})(?:\\[(\\d+)])?(?:-(\\d+)(?:\\[(\\d+)])?(?:\\.(\\d+))?)?");

    /** Empty for a place that is not in an HL7 v2 message. */
    static Optional<ErrorLocation> of(String location) {
        var matcher = FORM.matcher(location);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        String component = orElse(matcher.group(5), "");
        return Optional.of(
                new ErrorLocation(
                        matcher.group(1),
                        orElse(matcher.group(2), "1"),
                        orElse(matcher.group(3), ""),
                        orElse(matcher.group(4), component.isEmpty() ? "" : "1"),
                        component));
    }

    private static String orElse(String text, String other) {
        return text == null ? other : text;
    }
}
