package dev.isoline.ledger;

import java.time.Instant;
import java.util.List;

/** {@code timeline}: what happened to an order, when and by whom. */
public interface TimelineTable {

    /**
     * @param detail one line without patient detail
     */
    record Entry(String orderId, Instant at, String event, String actor, String detail) {}

    void add(Entry entry);

    List<Entry> of(String orderId);
}
