package dev.isoline.hl7v2;

import dev.isoline.order.Problem;
import java.util.ArrayList;
import java.util.List;

/**
 * Which answers a message wants, HL7 v2.5.1 ch. 2.9.2 and 2.9.3, tables 0155 and 0008.
 *
 * @param enhanced whether MSH-15 or MSH-16 is valued
 * @param accept MSH-15, {@code NE} when empty
 * @param application MSH-16, {@code NE} when empty; {@code AL} in original mode
 */
public record AcknowledgementMode(boolean enhanced, String accept, String application) {

    public static AcknowledgementMode of(MessageHeader request) {
        String accept = request.acceptAcknowledgment();
        String application = request.applicationAcknowledgment();
        return accept.isEmpty() && application.isEmpty()
                ? new AcknowledgementMode(false, "NE", "AL")
                : new AcknowledgementMode(true, orNever(accept), orNever(application));
    }

    /** MSA-1 of each answer, in the order they are sent; none when none is wanted. */
    public List<String> codes(List<Problem> problems) {
        char outcome = Table0357.answer(problems);
        var codes = new ArrayList<String>();
        char commit = commit(problems, outcome);
        if (wants(accept, commit)) {
            codes.add("C" + commit);
        }
        if (wants(application, outcome) && (commit == 'A' || codes.isEmpty())) {
            codes.add("A" + outcome);
        }
        return List.copyOf(codes);
    }

    /**
     * The message is worked through before it is answered, so a sender that wants no application
     * answer still learns of an error: it gets CE. Where both are wanted the commit says only that
     * the message is kept. A fault of the gateway is CE: the same message may be sent again.
     */
    private char commit(List<Problem> problems, char outcome) {
        if (outcome == 'E') {
            return application.equals("NE") ? 'E' : 'A';
        }
        boolean ours =
                problems.stream().anyMatch(p -> p.isError() && p.kind() == Problem.Kind.INTERNAL);
        return ours ? 'E' : outcome;
    }

    private static boolean wants(String condition, char outcome) {
        return switch (condition) {
            case "NE" -> false;
            case "SU" -> outcome == 'A';
            case "ER" -> outcome != 'A';
            default -> true;
        };
    }

    private static String orNever(String condition) {
        return condition.isEmpty() ? "NE" : condition;
    }
}
