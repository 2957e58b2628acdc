package dev.isoline.intake;

import dev.isoline.attach.OrderTask;
import dev.isoline.ledger.OrderTable.OrderRow;
import dev.isoline.ledger.ResourceTable.Criterion;
import dev.isoline.ledger.Tables;
import dev.isoline.order.StableId;
import dev.isoline.resources.FhirJson;
import dev.isoline.resources.OrderResources;
import dev.isoline.resources.ResourceStore;
import java.time.Instant;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Coverage;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.Task;

/**
 * Resources as one unit of work sees them: read once, and written once, at the end, when they
 * changed.
 */
final class Known {

    /** More than anybody has. */
    private static final int MOST_COVERAGES = 100;

    /** What moving an order changes. */
    private static final Set<String> MOVED = Set.of("ServiceRequest", "Task");

    private final Tables tables;
    private final Instant at;
    private final Map<String, Optional<Resource>> seen = new HashMap<>();
    private final Map<String, List<Coverage>> covered = new HashMap<>();
    private final Map<String, Resource> changed = new LinkedHashMap<>();
    private boolean updated;

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

    /**
     * A resource that says what is stored already makes no new version.
     *
     * @param resource not changed by anybody from here on
     */
    void put(Resource resource) {
        String reference = References.to(resource);
        Optional<Resource> before = find(reference);
        if (before.filter(b -> same(b, resource)).isEmpty()) {
            updated |= before.isPresent() && !MOVED.contains(resource.fhirType());
            seen.put(reference, Optional.of(resource));
            changed.put(reference, resource);
        }
    }

    /** Whether something was told anew that was known before, an order's own state apart. */
    boolean hasUpdated() {
        return updated;
    }

    /** Writes what changed: the last act of the unit, however often a resource was put. */
    void store() {
        changed.values().forEach(resource -> ResourceStore.put(tables, resource, at));
        changed.clear();
        covered.clear();
    }

    /** Of a patient, newest first, as they are with what this unit changed. */
    List<Coverage> coverages(String patientId) {
        var stored = covered.computeIfAbsent(patientId, this::storedCoverages);
        return Stream.concat(
                        changed.values().stream()
                                .filter(Coverage.class::isInstance)
                                .map(Coverage.class::cast)
                                .filter(c -> patientId.equals(beneficiary(c)))
                                .sorted(Comparator.comparing(References::to).reversed()),
                        stored.stream().filter(c -> !changed.containsKey(References.to(c))))
                .toList();
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

    private List<Coverage> storedCoverages(String patientId) {
        var criteria = List.of(new Criterion("beneficiary", "Patient", List.of(patientId)));
        return ResourceStore.search(tables, Coverage.class, criteria, 0, MOST_COVERAGES);
    }

    private static String beneficiary(Coverage coverage) {
        return coverage.getBeneficiary().getReferenceElement().getIdPart();
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
