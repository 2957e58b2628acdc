package dev.isoline.ledger;

import java.time.Instant;

/** {@code audit}: who reached which patient data, and how. */
public interface AuditTable {

    /**
     * @param entity such as {@code Patient/…}; never a name
     */
    record Event(Instant at, String actor, String action, String entity, String outcome) {}

    void add(Event event);
}
