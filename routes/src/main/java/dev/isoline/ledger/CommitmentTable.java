package dev.isoline.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** {@code commitment}: what archives were asked to commit themselves to, and what they reported. */
public final class CommitmentTable {

    /**
     * @param transaction Transaction UID
     * @param destination the archive
     * @param reportedAt null as long as the archive owes its report
     */
    public record CommitmentRow(
            String transaction,
            String destination,
            String orderId,
            Instant requestedAt,
            Instant reportedAt) {}

    /**
     * @param delivery the delivery that stored the object
     */
    public record ObjectRow(String sopInstance, String sopClass, long delivery) {}

    private static final String SELECT =
            "SELECT transaction_uid, destination, order_id, requested_at, reported_at"
                    + " FROM commitment WHERE ";

    private final Session session;

    CommitmentTable(Session session) {
        this.session = session;
    }

    /** Fails when the transaction UID was used before. */
    public void add(CommitmentRow row, List<ObjectRow> objects) {
        session.update(
                "INSERT INTO commitment (transaction_uid, destination, order_id, requested_at)"
                        + " VALUES (?, ?, ?, ?)",
                row.transaction(),
                row.destination(),
                row.orderId(),
                row.requestedAt());
        session.updateAll(
                "INSERT INTO commitment_object (transaction_uid, sop_instance, sop_class, delivery)"
                        + " VALUES (?, ?, ?, ?)",
                objects.stream().map(object -> values(row.transaction(), object)).toList());
    }

    public Optional<CommitmentRow> byTransaction(String transaction) {
        return session.first(
                CommitmentTable::commitment, SELECT + "transaction_uid = ?", transaction);
    }

    /** All requests to one archive for one order, oldest first. */
    public List<CommitmentRow> ofLane(String destination, String orderId) {
        return session.list(
                CommitmentTable::commitment,
                SELECT + "order_id = ? AND destination = ? ORDER BY requested_at",
                orderId,
                destination);
    }

    public List<ObjectRow> objects(String transaction) {
        return session.list(
                row -> new ObjectRow(row.getString(1), row.getString(2), row.getLong(3)),
                "SELECT sop_instance, sop_class, delivery FROM commitment_object"
                        + " WHERE transaction_uid = ? ORDER BY delivery",
                transaction);
    }

    public void reported(String transaction, Instant at) {
        session.update(
                "UPDATE commitment SET reported_at = ? WHERE transaction_uid = ?", at, transaction);
    }

    private static Object[] values(String transaction, ObjectRow object) {
        return new Object[] {
            transaction, object.sopInstance(), object.sopClass(), object.delivery()
        };
    }

    private static CommitmentRow commitment(ResultSet row) throws SQLException {
        return new CommitmentRow(
                row.getString(1),
                row.getString(2),
                row.getString(3),
                Session.instant(row, 4),
                Session.instant(row, 5));
    }
}
