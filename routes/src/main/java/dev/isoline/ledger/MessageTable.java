package dev.isoline.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Optional;

/** {@code message}: every message as its bytes came, and the answer it got. */
public final class MessageTable {

    /**
     * @param channel how it came: {@code mllp}, {@code fhir}, {@code recording}
     * @param sender MSH-3 and MSH-4 as {@code app|facility}, or the name of the HTTP client
     * @param controlId MSH-10; empty when the message had none
     * @param type MSH-9 as {@code ORM^O01}, or the FHIR interaction
     * @param sha256 of the raw bytes, lower-case hex
     */
    public record NewMessage(
            String channel,
            String sender,
            String controlId,
            String type,
            String sha256,
            byte[] raw,
            Instant receivedAt) {}

    /**
     * @param answer null until it is answered
     * @param outcome {@code AA}, {@code AE}, {@code AR}, or an HTTP status; empty until then
     */
    public record StoredMessage(long id, NewMessage message, byte[] answer, String outcome) {}

    private static final String SELECT =
            "SELECT id, channel, sender, control_id, type, sha256, raw, received_at, answer,"
                    + " outcome FROM message WHERE ";

    private final Session session;

    MessageTable(Session session) {
        this.session = session;
    }

    /** The new row's id. */
    public long insert(NewMessage message) {
        return session.number(
                "INSERT INTO message (channel, sender, control_id, type, sha256, raw, received_at)"
                        + " VALUES (?, ?, ?, ?, ?, ?, ?) RETURNING id",
                message.channel(),
                message.sender(),
                message.controlId(),
                message.type(),
                message.sha256(),
                message.raw(),
                message.receivedAt());
    }

    /** Fails when another message of this sender with this control id was accepted before. */
    public void answered(long id, byte[] answer, String outcome) {
        session.update(
                "UPDATE message SET answer = ?, outcome = ?, accepted = ? WHERE id = ?",
                answer,
                outcome,
                isAcceptance(outcome) ? 1 : 0,
                id);
    }

    /** The accepted (not refused) message of this sender with this control id. */
    public Optional<StoredMessage> accepted(String channel, String sender, String controlId) {
        return session.first(
                MessageTable::stored,
                SELECT
                        + "channel = ? AND sender = ? AND control_id = ?"
                        + " AND accepted = 1 AND control_id <> ''",
                channel,
                sender,
                controlId);
    }

    public Optional<StoredMessage> byId(long id) {
        return session.first(MessageTable::stored, SELECT + "id = ?", id);
    }

    /** HL7 table 0008, or the HTTP class of success. */
    private static boolean isAcceptance(String outcome) {
        return outcome.equals("AA") || outcome.equals("CA") || outcome.startsWith("2");
    }

    private static StoredMessage stored(ResultSet row) throws SQLException {
        var message =
                new NewMessage(
                        row.getString(2),
                        row.getString(3),
                        row.getString(4),
                        row.getString(5),
                        row.getString(6),
                        row.getBytes(7),
                        Session.instant(row, 8));
        return new StoredMessage(row.getLong(1), message, row.getBytes(9), row.getString(10));
    }
}
