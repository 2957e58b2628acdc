package dev.isoline.flow;

import dev.isoline.hl7v2.MessageHeader;
import dev.isoline.ledger.MessageTable.NewMessage;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.HexFormat;

/**
 * An HL7 v2 message as it came.
 *
 * @param header what can be told of it without reading the rest
 */
record Received(byte[] raw, MessageHeader header, Instant at) {

    static final String CHANNEL = "mllp";

    static Received of(byte[] raw, Instant at) {
        return new Received(raw, MessageHeader.peek(raw), at);
    }

    NewMessage row() {
        return new NewMessage(
                CHANNEL,
                header.sendingApplication() + "|" + header.sendingFacility(),
                header.controlId(),
                header.messageCode() + "^" + header.triggerEvent(),
                sha256(),
                raw,
                at);
    }

    private String sha256() {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(raw));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
