package dev.isoline.hl7v2;

import dev.isoline.order.Problem;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;

/** MSH (HL7 v2.5.1 ch. 2.15.9) and MSA (ch. 2.15.8) of an answer. */
final class AcknowledgementSegments {

    private static final DateTimeFormatter SECONDS =
            DateTimeFormatter.ofPattern("yyyyMMddHHmmssxx").withZone(ZoneOffset.UTC);

    /** What ST holds in versions before 2.5. */
    private static final int LONGEST_TEXT = 200;

    private AcknowledgementSegments() {}

    static String msh(MessageHeader request, String controlId, Instant at) {
        boolean enhanced = AcknowledgementMode.of(request).enhanced();
        return new SegmentText(request.delimiters(), "MSH", 1)
                .raw(2, request.delimiters().encodingCharacters())
                .raw(3, orElse(request.field(5), "ISOLINE"))
                .raw(4, request.field(6))
                .raw(5, request.field(3))
                .raw(6, request.field(4))
                .raw(7, SECONDS.format(at))
                .components(9, messageType(request))
                .text(10, controlId)
                .raw(11, orElse(request.field(11), "P"))
                .raw(12, orElse(request.field(12), "2.5.1"))
                .raw(15, enhanced ? "NE" : "")
                .raw(16, enhanced ? "NE" : "")
                .raw(
                        18,
                        Table0211.charset(request.characterSet()).isPresent()
                                ? request.field(18)
                                : "")
                .toString();
    }

    static String msa(MessageHeader request, String code, List<Problem> problems) {
        var segment = new SegmentText(request.delimiters(), "MSA", 0);
        return segment.raw(1, code)
                .raw(2, request.controlId())
                .text(3, text(request, code, problems))
                .toString();
    }

    /** Ch. 2.15.2. */
    static String bhs(MessageHeader request, String controlId, Instant at) {
        return new SegmentText(request.delimiters(), "BHS", 1)
                .raw(2, request.delimiters().encodingCharacters())
                .raw(3, orElse(request.field(5), "ISOLINE"))
                .raw(4, request.field(6))
                .raw(5, request.field(3))
                .raw(6, request.field(4))
                .raw(7, SECONDS.format(at))
                .text(11, controlId)
                .raw(12, request.field(11))
                .toString();
    }

    /** Ch. 2.15.3; BTS-2 is a comment. */
    static String bts(MessageHeader request, int count, List<Problem> warnings) {
        String comment = String.join(" ", warnings.stream().map(Problem::text).toList());
        return new SegmentText(request.delimiters(), "BTS", 0)
                .raw(1, String.valueOf(count))
                .text(2, comment)
                .toString();
    }

    /** v2.3 knows the message code only; MSH-9.3 came with v2.3.1. */
    private static String[] messageType(MessageHeader request) {
        return Hl7Version.isBefore(request.version(), "2.3.1") || request.triggerEvent().isEmpty()
                ? new String[] {"ACK"}
                : new String[] {"ACK", request.triggerEvent(), "ACK"};
    }

    /** MSA-3 is for older versions; newer ones get it for errors, because many show only this. */
    private static String text(MessageHeader request, String code, List<Problem> problems) {
        if (code.equals("CA")
                || code.endsWith("A") && !Hl7Version.isBefore(request.version(), "2.5")) {
            return "";
        }
        String all = String.join(" ", problems.stream().map(Problem::text).toList());
        return all.length() <= LONGEST_TEXT ? all : all.substring(0, LONGEST_TEXT - 3) + "...";
    }

    private static String orElse(String text, String other) {
        return text.isEmpty() ? other : text;
    }
}
