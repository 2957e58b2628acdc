package dev.isoline.hl7v2;

import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import java.time.Instant;
import java.util.List;

/** Reads a message and answers it, as the gateway does when nothing after reading objects. */
final class Answers {

    static final Instant AT = Instant.parse("2026-11-25T08:30:00Z");

    private Answers() {}

    static List<Acknowledgement> to(byte[] raw) {
        return Acknowledgement.answers(MessageHeader.peek(raw), problems(raw), "G1", AT);
    }

    private static List<Problem> problems(byte[] raw) {
        try {
            return Er7Reader.read(raw, SenderDefaults.STANDARD).warnings();
        } catch (ContentError e) {
            return e.problems();
        }
    }
}
