package dev.isoline.ledger;

import dev.isoline.order.OrderState;
import dev.isoline.order.Problem;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** {@code orders}: one row per order, its numbers and where it stands. */
public interface OrderTable {

    /**
     * @param id the id of its ServiceRequest
     * @param sender name of the configured sender it came from
     * @param placerSystem namespace of the placer order number
     * @param placer placer order number
     * @param filler filler order number, ours
     * @param accession accession number, at most 16 characters
     * @param patientId id of its Patient
     * @param reasons why it is held or refused; empty when it is not
     * @param dueAt when the report is owed, null until the recording is in
     */
    record OrderRow(
            String id,
            String sender,
            String placerSystem,
            String placer,
            String filler,
            String accession,
            String patientId,
            OrderState state,
            List<Problem> reasons,
            Instant dueAt,
            Instant updatedAt) {}

    void insert(OrderRow row);

    void update(OrderRow row);

    Optional<OrderRow> byId(String id);

    Optional<OrderRow> byPlacer(String placerSystem, String placer);

    /** Orders whose placer, filler or accession number is this; more than one is ambiguous. */
    List<OrderRow> byNumber(String number);

    List<OrderRow> byPatient(String patientId);

    List<OrderRow> byState(OrderState state, int limit);
}
