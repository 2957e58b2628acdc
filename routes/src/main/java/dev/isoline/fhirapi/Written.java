package dev.isoline.fhirapi;

import dev.isoline.intake.OrderOutcome;
import dev.isoline.ledger.ResourceTable.StoredResource;
import dev.isoline.order.Problem;
import java.util.List;

/**
 * What became of one entry.
 *
 * @param created false when it was updated or was there before
 * @param stored the version that stands now
 * @param orders the orders of the request this entry answers for
 */
record Written(boolean created, StoredResource stored, List<OrderOutcome> orders) {

    String reference() {
        return stored.type() + "/" + stored.id();
    }

    List<Problem> problems() {
        return orders.stream().flatMap(o -> o.problems().stream()).toList();
    }
}
