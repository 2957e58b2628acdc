package dev.isoline.ledger;

import java.time.Instant;
import java.util.List;

/** {@code timeline}: what happened to an order, when and by whom. */
public final class TimelineTable {

    /**
     * @param detail one line without patient detail
     */
    public record Entry(String orderId, Instant at, String event, String actor, String detail) {}

    private final Session session;

    TimelineTable(Session session) {
        this.session = session;
    }

    public void add(Entry entry) {
        session.update(
                "INSERT INTO timeline (order_id, seq, at, event, actor, detail)"
                        + " VALUES (?, (SELECT COALESCE(MAX(seq), 0) + 1 FROM timeline"
                        + " WHERE order_id = ?), ?, ?, ?, ?)",
                entry.orderId(),
                entry.orderId(),
                entry.at(),
                entry.event(),
                entry.actor(),
                entry.detail());
    }

    /** In the order they were added. */
    public List<Entry> of(String orderId) {
        return session.list(
                row ->
                        new Entry(
                                row.getString(1),
                                Session.instant(row, 2),
                                row.getString(3),
                                row.getString(4),
                                row.getString(5)),
                "SELECT order_id, at, event, actor, detail FROM timeline WHERE order_id = ?"
                        + " ORDER BY seq",
                orderId);
    }
}
