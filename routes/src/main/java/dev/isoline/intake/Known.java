package dev.isoline.intake;

import dev.isoline.attach.OrderTask;
import dev.isoline.ledger.OrderTable.OrderRow;
import dev.isoline.ledger.Tables;
import dev.isoline.order.StableId;
import dev.isoline.resources.FhirJson;
import dev.isoline.resources.OrderResources;
import dev.isoline.resources.ResourceStore;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.Task;

/** Resources as one unit of work sees them: read once, written when they changed. */
final class Known {

    private final Tables tables;
    private final Instant at;
    private final Map<String, Optional<Resource>> seen = new HashMap<>();

    Known(Tables tables, Instant at) {
        this.tables = tables;
        this.at = at;
    }

    Tables tables() {
        return tables;
    }

    Instant at() {
        return at;
    }

    /** By relative reference; empty when nothing is stored under it. */
    Optional<Resource> find(String reference) {
        return seen.computeIfAbsent(reference, this::stored);
    }

    <R extends Resource> Optional<R> find(Class<R> type, String id) {
        return find(type.getSimpleName() + "/" + id).map(type::cast);
    }

    /** A resource that says what is stored already makes no new version. */
    void put(Resource resource) {
        String reference = References.to(resource);
        if (find(reference).filter(before -> same(before, resource)).isEmpty()) {
            seen.put(reference, Optional.of(ResourceStore.put(tables, resource, at)));
        }
    }

    /** An order with what is stored about it. */
    OrderResources order(OrderRow row) {
        var order = find(ServiceRequest.class, row.id()).orElseThrow();
        return new OrderResources(
                row,
                order,
                find(Patient.class, row.patientId()).orElseThrow(),
                find(Task.class, StableId.of("Task", row.id()))
                        .orElseGet(() -> OrderTask.of(order, row.state(), row.reasons(), at)),
                this::find);
    }

    private Optional<Resource> stored(String reference) {
        String[] parts = reference.split("/");
        return parts.length == 2
                ? tables.resources().get(parts[0], parts[1]).map(r -> FhirJson.decode(r.json()))
                : Optional.empty();
    }

    private static boolean same(Resource before, Resource now) {
        Resource plain = before.copy();
        plain.setMeta(now.getMeta().copy());
        plain.setId(now.getIdElement().copy());
        return plain.equalsDeep(now);
    }
}
