package dev.isoline.ledger;

import java.time.Instant;
import java.util.List;

/** {@code audit}: who reached which patient data, and how. */
public final class AuditTable {

    /**
     * @param entity such as {@code Patient/…}; never a name
     */
    public record Event(Instant at, String actor, String action, String entity, String outcome) {}

    private final Session session;

    AuditTable(Session session) {
        this.session = session;
    }

    public void add(Event event) {
        session.update(
                "INSERT INTO audit (at, actor, action, entity, outcome) VALUES (?, ?, ?, ?, ?)",
                event.at(),
                event.actor(),
                event.action(),
                event.entity(),
                event.outcome());
    }

    /** Oldest first. */
    public List<Event> of(String entity) {
        return session.list(
                row ->
                        new Event(
                                Session.instant(row, 1),
                                row.getString(2),
                                row.getString(3),
                                row.getString(4),
                                row.getString(5)),
                "SELECT at, actor, action, entity, outcome FROM audit WHERE entity = ? ORDER BY id",
                entity);
    }
}
