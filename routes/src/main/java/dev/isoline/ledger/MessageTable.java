package dev.isoline.ledger;

import java.time.Instant;
import java.util.Optional;

/** {@code message}: every message as its bytes came, and the answer it got. */
public interface MessageTable {

    /**
     * @param channel how it came: {@code mllp}, {@code fhir}, {@code recording}
     * @param sender MSH-3 and MSH-4 as {@code app|facility}, or the name of the HTTP client
     * @param controlId MSH-10; empty when the message had none
     * @param type MSH-9 as {@code ORM^O01}, or the FHIR interaction
     * @param sha256 of the raw bytes, lower-case hex
     */
    record NewMessage(
            String channel,
            String sender,
            String controlId,
            String type,
            String sha256,
            byte[] raw,
            Instant receivedAt) {}

    /**
     * @param outcome {@code AA}, {@code AE}, {@code AR}, or an HTTP status
     */
    record StoredMessage(long id, NewMessage message, byte[] answer, String outcome) {}

    long insert(NewMessage message);

    void answered(long id, byte[] answer, String outcome);

    /** The accepted (not refused) message of this sender with this control id. */
    Optional<StoredMessage> accepted(String channel, String sender, String controlId);

    Optional<StoredMessage> byId(long id);
}
