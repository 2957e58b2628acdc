package dev.isoline.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * {@code delivery} and {@code delivery_payload}: the outbox. A lane is destination + order;
 * deliveries of a lane keep their order.
 */
public final class DeliveryTable {

    /** {@code STORED}: an archive has it and owes its commitment to keep it. */
    public enum State {
        PENDING,
        STORED,
        DELIVERED,
        PARKED
    }

    /**
     * @param kind what it is: {@code order}, {@code status}, {@code report}, {@code oru}, {@code
     *     object}, {@code commitment}
     * @param payload the exact bytes to send; null when {@code path} names a file instead
     * @param path file relative to the data folder, or null
     */
    public record NewDelivery(
            String destination,
            String orderId,
            String kind,
            String contentType,
            byte[] payload,
            String path,
            Instant at) {}

    /**
     * @param attempts how often it was tried and judged
     * @param lastError what the last failed try met; empty when there is none
     */
    public record DeliveryRow(
            long id,
            NewDelivery delivery,
            State state,
            int attempts,
            Instant nextTry,
            String lastError) {}

    private static final String SELECT =
            "SELECT d.id, d.destination, d.order_id, d.kind, d.content_type, p.payload, d.path,"
                    + " d.created_at, d.state, d.attempts, d.next_try, d.last_error"
                    + " FROM delivery d LEFT JOIN delivery_payload p ON p.delivery = d.id WHERE ";

    private static final String IS_DUE_HEAD =
            "d.state = 'PENDING' AND d.next_try <= ? AND d.claimed_until <= ?"
                    + " AND NOT EXISTS (SELECT 1 FROM delivery e"
                    + " WHERE e.destination = d.destination AND e.order_id = d.order_id"
                    + " AND e.seq < d.seq AND e.state NOT IN ('DELIVERED', 'STORED'))";

    private final Session session;

    DeliveryTable(Session session) {
        this.session = session;
    }

    /** Appends to the lane of its destination and order. */
    public long add(NewDelivery delivery) {
        long id =
                session.number(
                        "INSERT INTO delivery (destination, order_id, seq, kind, content_type,"
                                + " path, created_at, state, next_try)"
                                + " VALUES (?, ?, (SELECT COALESCE(MAX(seq), 0) + 1 FROM delivery"
                                + " WHERE destination = ? AND order_id = ?),"
                                + " ?, ?, ?, ?, 'PENDING', ?) RETURNING id",
                        delivery.destination(),
                        delivery.orderId(),
                        delivery.destination(),
                        delivery.orderId(),
                        delivery.kind(),
                        delivery.contentType(),
                        delivery.path(),
                        delivery.at(),
                        delivery.at());
        if (delivery.payload() != null) {
            session.update(
                    "INSERT INTO delivery_payload (delivery, payload) VALUES (?, ?)",
                    id,
                    delivery.payload());
        }
        return id;
    }

    /**
     * The heads of lanes that may be tried now: the oldest pending delivery of each lane whose next
     * try is due and that nobody has claimed. A lane whose head is parked waits until a person
     * decides.
     */
    public List<DeliveryRow> due(Instant now, int limit) {
        return session.list(
                DeliveryTable::delivery,
                SELECT + IS_DUE_HEAD + " ORDER BY d.next_try, d.id LIMIT ?",
                now,
                now,
                limit);
    }

    /** As {@link #due(Instant, int)}, for one destination. */
    public List<DeliveryRow> due(String destination, Instant now, int limit) {
        return session.list(
                DeliveryTable::delivery,
                SELECT
                        + "d.destination = ? AND "
                        + IS_DUE_HEAD
                        + " ORDER BY d.next_try, d.id LIMIT ?",
                destination,
                now,
                now,
                limit);
    }

    /**
     * Takes due heads of one destination, so that no other node tries them before {@code until}.
     * What became of each is told by {@link #delivered}, {@link #retry} or {@link #park}.
     */
    public List<DeliveryRow> claim(String destination, Instant now, Instant until, int limit) {
        return due(destination, now, limit).stream()
                .filter(row -> claim(row.id(), now, until))
                .toList();
    }

    public void delivered(long id, Instant at, String receipt) {
        session.update(
                "UPDATE delivery SET state = 'DELIVERED', attempts = attempts + 1,"
                        + " claimed_until = 0, finished_at = ?, receipt = ?, last_error = ''"
                        + " WHERE id = ?",
                at,
                receipt,
                id);
    }

    public void retry(long id, Instant nextTry, String error) {
        session.update(
                "UPDATE delivery SET attempts = attempts + 1, claimed_until = 0, next_try = ?,"
                        + " last_error = ? WHERE id = ? AND state = 'PENDING'",
                nextTry,
                error,
                id);
    }

    /** An answer is waited for, unless one came meanwhile and had it tried again. */
    public void await(long id, Instant until, String what) {
        session.update(
                "UPDATE delivery SET attempts = attempts + 1, claimed_until = 0, next_try = ?,"
                        + " last_error = ? WHERE id = ? AND state = 'PENDING'"
                        + " AND claimed_until > 0",
                until,
                what,
                id);
    }

    public void park(long id, String error) {
        session.update(
                "UPDATE delivery SET state = 'PARKED', attempts = attempts + 1, claimed_until = 0,"
                        + " last_error = ? WHERE id = ? AND state = 'PENDING'",
                error,
                id);
    }

    /** An archive has taken it; it is delivered when the archive has committed itself. */
    public void stored(long id, String receipt) {
        session.update(
                "UPDATE delivery SET state = 'STORED', attempts = attempts + 1, claimed_until = 0,"
                        + " receipt = ?, last_error = '' WHERE id = ? AND state = 'PENDING'",
                receipt,
                id);
    }

    /** False when it was not waiting for that. */
    public boolean committed(long id, Instant at, String receipt) {
        return session.update(
                        "UPDATE delivery SET state = 'DELIVERED', finished_at = ?, receipt = ?"
                                + " WHERE id = ? AND state = 'STORED'",
                        at,
                        receipt,
                        id)
                == 1;
    }

    /** The archive lost it: it is sent again. False when it was not waiting for a commitment. */
    public boolean sendAgain(long id, Instant at, String error) {
        return session.update(
                        "UPDATE delivery SET state = 'PENDING', next_try = ?, last_error = ?"
                                + " WHERE id = ? AND state = 'STORED'",
                        at,
                        error,
                        id)
                == 1;
    }

    /** The archive will not commit itself. False when it was not waiting for that. */
    public boolean parkStored(long id, String error) {
        return session.update(
                        "UPDATE delivery SET state = 'PARKED', last_error = ?"
                                + " WHERE id = ? AND state = 'STORED'",
                        error,
                        id)
                == 1;
    }

    /** What one destination is sent of one order, in its order. */
    public List<DeliveryRow> ofLane(String destination, String orderId) {
        return session.list(
                DeliveryTable::delivery,
                SELECT + "d.order_id = ? AND d.destination = ? ORDER BY d.seq",
                orderId,
                destination);
    }

    /** Prolongs claims of ours; how many still stood. */
    public int renew(List<Long> ids, Instant until) {
        return ids.stream()
                .mapToInt(
                        id ->
                                session.update(
                                        "UPDATE delivery SET claimed_until = ? WHERE id = ?"
                                                + " AND state = 'PENDING' AND claimed_until > 0",
                                        until,
                                        id))
                .sum();
    }

    /** Gives a claim back untried. */
    public void release(long id) {
        session.update("UPDATE delivery SET claimed_until = 0 WHERE id = ?", id);
    }

    /** Destinations for which something waits. */
    public List<String> pendingDestinations() {
        return session.list(
                row -> row.getString(1),
                "SELECT DISTINCT destination FROM delivery WHERE state = 'PENDING' ORDER BY 1");
    }

    /** Makes a parked delivery pending again, with all its attempts before it. */
    public void resume(long id, Instant now) {
        session.update(
                "UPDATE delivery SET state = 'PENDING', attempts = 0, next_try = ?"
                        + " WHERE id = ? AND state = 'PARKED'",
                now,
                id);
    }

    /** Gives up all claims: for the start of a process that has the store for itself. */
    void releaseClaims() {
        session.update("UPDATE delivery SET claimed_until = 0 WHERE state = 'PENDING'");
    }

    public Optional<DeliveryRow> byId(long id) {
        return session.first(DeliveryTable::delivery, SELECT + "d.id = ?", id);
    }

    /** What the receiver answered; empty until it is delivered. */
    public String receipt(long id) {
        return session.first(
                        row -> row.getString(1), "SELECT receipt FROM delivery WHERE id = ?", id)
                .orElse("");
    }

    /** Oldest first. */
    public List<DeliveryRow> ofOrder(String orderId) {
        return session.list(
                DeliveryTable::delivery, SELECT + "d.order_id = ? ORDER BY d.id", orderId);
    }

    /** Oldest first. */
    public List<DeliveryRow> byState(State state, int limit) {
        return session.list(
                DeliveryTable::delivery,
                SELECT + "d.state = ? ORDER BY d.id LIMIT ?",
                state,
                limit);
    }

    /** False when another node was quicker; the row's own lock decides. */
    private boolean claim(long id, Instant now, Instant until) {
        return session.update(
                        "UPDATE delivery SET claimed_until = ? WHERE id = ? AND state = 'PENDING'"
                                + " AND next_try <= ? AND claimed_until <= ?",
                        until,
                        id,
                        now,
                        now)
                == 1;
    }

    private static DeliveryRow delivery(ResultSet row) throws SQLException {
        var delivery =
                new NewDelivery(
                        row.getString(2),
                        row.getString(3),
                        row.getString(4),
                        row.getString(5),
                        row.getBytes(6),
                        row.getString(7),
                        Session.instant(row, 8));
        return new DeliveryRow(
                row.getLong(1),
                delivery,
                State.valueOf(row.getString(9)),
                row.getInt(10),
                Session.instant(row, 11),
                row.getString(12));
    }
}
