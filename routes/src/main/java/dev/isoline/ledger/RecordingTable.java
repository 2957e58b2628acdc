package dev.isoline.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** {@code recording}: files received, their checksum, the order they belong to. */
public final class RecordingTable {

    /**
     * {@code RECEIVED} waits for analysis; {@code HELD} for a person; {@code FAILED} is unreadable.
     */
    public enum State {
        RECEIVED,
        HELD,
        ANALYSED,
        FAILED
    }

    /**
     * @param id stable id derived from the checksum
     * @param sha256 of the bytes as received
     * @param orderId null as long as it belongs to none
     * @param path relative to the data folder
     * @param problem why it is held or failed; empty otherwise
     */
    public record RecordingRow(
            String id,
            String sha256,
            String orderId,
            String path,
            String sender,
            State state,
            String problem,
            Instant receivedAt) {

        public RecordingRow with(State state, String problem) {
            return new RecordingRow(id, sha256, orderId, path, sender, state, problem, receivedAt);
        }
    }

    private static final String SELECT =
            "SELECT id, sha256, order_id, path, sender, state, problem, received_at"
                    + " FROM recording WHERE ";

    private final Session session;

    RecordingTable(Session session) {
        this.session = session;
    }

    /** Fails when the same bytes are there already. */
    public void insert(RecordingRow row) {
        session.update(
                "INSERT INTO recording (sha256, order_id, path, sender, state, problem,"
                        + " received_at, id) VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
                values(row));
    }

    public void update(RecordingRow row) {
        session.update(
                "UPDATE recording SET sha256 = ?, order_id = ?, path = ?, sender = ?, state = ?,"
                        + " problem = ?, received_at = ? WHERE id = ?",
                values(row));
    }

    /** Remembers as which DICOM object a recording came; fails when another one came as it. */
    public void cameAs(String id, String sopInstance) {
        session.update("UPDATE recording SET sop_instance = ? WHERE id = ?", sopInstance, id);
    }

    /** The recording that came as this DICOM object. */
    public Optional<RecordingRow> bySopInstance(String sopInstance) {
        return session.first(RecordingTable::recording, SELECT + "sop_instance = ?", sopInstance);
    }

    public Optional<RecordingRow> byId(String id) {
        return session.first(RecordingTable::recording, SELECT + "id = ?", id);
    }

    public Optional<RecordingRow> bySha256(String sha256) {
        return session.first(RecordingTable::recording, SELECT + "sha256 = ?", sha256);
    }

    /** Oldest first. */
    public List<RecordingRow> byState(State state, int limit) {
        return session.list(
                RecordingTable::recording,
                SELECT + "state = ? ORDER BY received_at, id LIMIT ?",
                state,
                limit);
    }

    private static Object[] values(RecordingRow row) {
        return new Object[] {
            row.sha256(),
            row.orderId(),
            row.path(),
            row.sender(),
            row.state(),
            row.problem(),
            row.receivedAt(),
            row.id()
        };
    }

    private static RecordingRow recording(ResultSet row) throws SQLException {
        return new RecordingRow(
                row.getString(1),
                row.getString(2),
                row.getString(3),
                row.getString(4),
                row.getString(5),
                State.valueOf(row.getString(6)),
                row.getString(7),
                Session.instant(row, 8));
    }
}
