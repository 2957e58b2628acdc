package dev.isoline.hl7v2;

import dev.isoline.order.Problem;
import java.util.List;
import java.util.stream.Collectors;

/** ERR: one segment per problem from v2.5 (ch. 2.15.5), one with repetitions before (v2.3.1). */
final class ErrorSegments {

    private ErrorSegments() {}

    static List<String> of(MessageHeader request, List<Problem> problems) {
        if (problems.isEmpty()) {
            return List.of();
        }
        return Hl7Version.isBefore(request.version(), "2.5")
                ? List.of(repeating(request.delimiters(), problems))
                : problems.stream().map(p -> single(request.delimiters(), p)).toList();
    }

    private static String single(Delimiters delimiters, Problem problem) {
        var segment = new SegmentText(delimiters, "ERR", 0);
        ErrorLocation.of(problem.location())
                .ifPresent(at -> segment.raw(2, trimmed(delimiters, erl(delimiters, at))));
        var condition = Table0357.of(problem.kind());
        return segment.components(3, condition.code(), condition.text(), "HL70357")
                .raw(4, problem.severity().name().substring(0, 1)) // HL7 table 0516: E, W, I
                .text(7, problem.location())
                .text(8, problem.text())
                .toString();
    }

    private static String erl(Delimiters delimiters, ErrorLocation at) {
        return String.join(
                String.valueOf(delimiters.component()),
                at.segment(),
                at.sequence(),
                at.field(),
                at.repetition(),
                at.component());
    }

    /** ELD: segment, sequence, field, code with text and table as its subcomponents. */
    private static String repeating(Delimiters delimiters, List<Problem> problems) {
        String separator = String.valueOf(delimiters.repetition());
        String all =
                problems.stream()
                        .map(p -> eld(delimiters, p))
                        .collect(Collectors.joining(separator));
        return new SegmentText(delimiters, "ERR", 0).raw(1, all).toString();
    }

    private static String eld(Delimiters delimiters, Problem problem) {
        var at = ErrorLocation.of(problem.location()).orElse(new ErrorLocation("", "", "", "", ""));
        return String.join(
                String.valueOf(delimiters.component()),
                at.segment(),
                at.sequence(),
                at.field(),
                code(delimiters, Table0357.of(problem.kind())));
    }

    /** A sender without subcomponents gets the code alone. */
    private static String code(Delimiters delimiters, Table0357 condition) {
        return delimiters
                .subcomponent()
                .map(s -> condition.code() + s + condition.text() + s + "HL70357")
                .orElse(condition.code());
    }

    private static String trimmed(Delimiters delimiters, String field) {
        int end = field.length();
        while (end > 0 && field.charAt(end - 1) == delimiters.component()) {
            end--;
        }
        return field.substring(0, end);
    }
}
