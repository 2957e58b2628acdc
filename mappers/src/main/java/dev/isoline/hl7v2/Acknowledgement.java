package dev.isoline.hl7v2;

import dev.isoline.order.Problem;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * An answer to a message, HL7 v2.5.1 ch. 2.9 and 2.14 (ACK): MSH, MSA and an ERR per problem, in
 * the delimiters, the version and the character set of the request.
 *
 * @param code MSA-1, HL7 table 0008
 * @param bytes the message, every segment ended by CR
 */
public record Acknowledgement(String code, byte[] bytes) {

    /**
     * The answers a message wants, in the order to send them: one in original mode; none, one or
     * two in enhanced mode.
     *
     * @param problems errors refuse the message; warnings go along with an AA
     * @param controlId MSH-10 of the first answer; a second one has {@code -2} after it
     * @param at MSH-7, written in UTC
     */
    public static List<Acknowledgement> answers(
            MessageHeader request, List<Problem> problems, String controlId, Instant at) {
        var answers = new ArrayList<Acknowledgement>();
        for (String code : codes(request, problems)) {
            String id = answers.isEmpty() ? controlId : controlId + "-2";
            answers.add(of(request, code, problems, id, at));
        }
        return List.copyOf(answers);
    }

    /** Without a readable MSH the message cannot be for us, whatever else is wrong with it. */
    private static List<String> codes(MessageHeader request, List<Problem> problems) {
        return request.isReadable()
                ? AcknowledgementMode.of(request).codes(problems)
                : List.of("AR");
    }

    /** One answer with the given MSA-1. */
    public static Acknowledgement of(
            MessageHeader request,
            String code,
            List<Problem> problems,
            String controlId,
            Instant at) {
        var segments = new ArrayList<String>();
        segments.add(AcknowledgementSegments.msh(request, controlId, at));
        segments.add(AcknowledgementSegments.msa(request, code, problems));
        // CA says that the message is kept; what is wrong with it is for the application answer
        segments.addAll(code.equals("CA") ? List.of() : ErrorSegments.of(request, problems));
        String text = String.join("\r", segments) + "\r";
        return new Acknowledgement(code, text.getBytes(request.encoding()));
    }
}
