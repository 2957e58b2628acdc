package dev.isoline.intake;

import dev.isoline.attach.Contradictions;
import dev.isoline.attach.MergedPatients;
import dev.isoline.ledger.OrderTable.OrderRow;
import dev.isoline.order.ContentError;
import dev.isoline.order.OrderEvent;
import dev.isoline.order.OrderState;
import dev.isoline.order.Problem;
import dev.isoline.order.Problem.Kind;
import dev.isoline.order.Transitions;
import dev.isoline.order.Vocabulary;
import dev.isoline.settings.Senders;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Coverage;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;

/** Resources of one FHIR request: stored as they are, then every order they touch is judged. */
final class FhirIntake {

    private final OrderBook orders;
    private final PlacedOrders placed;

    FhirIntake(OrderBook orders, PlacedOrders placed) {
        this.orders = orders;
        this.placed = placed;
    }

    List<OrderOutcome> take(
            Known known, Source source, List<Resource> resources, List<Patient> claimed) {
        var contradicted = contradictions(known, source, resources, claimed);
        refuseWithoutOrder(contradicted, resources);
        resources.stream()
                .filter(resource -> !(resource instanceof ServiceRequest))
                .filter(resource -> !contradicted.containsKey(References.to(resource)))
                .forEach(known::put);
        var outcomes = new ArrayList<OrderOutcome>();
        for (Resource resource : resources) {
            if (resource instanceof ServiceRequest order) {
                var problems =
                        contradicted.getOrDefault(order.getSubject().getReference(), List.of());
                outcomes.add(order(known, source, order, problems));
            }
        }
        patients(resources).stream()
                .flatMap(id -> orders.reviewHeld(known, source, id).stream())
                .filter(o -> outcomes.stream().noneMatch(b -> b.orderId().equals(o.orderId())))
                .forEach(outcomes::add);
        return outcomes;
    }

    /** Patients, by reference, whose birth date or sex differs from what is known. */
    private static Map<String, List<Problem>> contradictions(
            Known known, Source source, List<Resource> resources, List<Patient> claimed) {
        var contradicted = new LinkedHashMap<String, List<Problem>>();
        if (!source.sender().equals(Senders.OPERATOR)) {
            Stream.concat(resources.stream(), claimed.stream())
                    .filter(Patient.class::isInstance)
                    .map(Patient.class::cast)
                    .forEach(
                            patient ->
                                    contradicted.put(
                                            References.to(patient), differences(known, patient)));
            contradicted.values().removeIf(List::isEmpty);
        }
        return contradicted;
    }

    private static List<Problem> differences(Known known, Patient patient) {
        return known.find(Patient.class, patient.getIdElement().getIdPart())
                .map(stored -> Contradictions.between(stored, patient, Vocabulary.FHIR))
                .orElse(List.of());
    }

    /** What is known is not changed; an order that comes along is held, everything else refused. */
    private static void refuseWithoutOrder(
            Map<String, List<Problem>> contradicted, List<Resource> resources) {
        contradicted.forEach(
                (patient, problems) -> {
                    if (resources.stream().noneMatch(r -> isOrderFor(patient, r))) {
                        throw new ContentError(problems);
                    }
                });
    }

    private static boolean isOrderFor(String patient, Resource resource) {
        return resource instanceof ServiceRequest order
                && patient.equals(order.getSubject().getReference());
    }

    private OrderOutcome order(
            Known known, Source source, ServiceRequest order, List<Problem> contradictions) {
        Optional<OrderRow> row = known.tables().orders().byId(order.getIdElement().getIdPart());
        if (row.isEmpty()) {
            return placed.place(known, source, order, subject(known, order), contradictions);
        }
        if (order.getStatus() == ServiceRequestStatus.REVOKED) {
            return cancel(known, source, row.get());
        }
        return change(known, source, row.get(), order, contradictions);
    }

    /** What an order asks for may change until it is passed on; its state is the gateway's. */
    private OrderOutcome change(
            Known known,
            Source source,
            OrderRow row,
            ServiceRequest order,
            List<Problem> contradictions) {
        if (row.state() != OrderState.ON_HOLD) {
            throw refused(
                    "ServiceRequest",
                    "The order was passed on and cannot be changed any more; cancel it and place a new one.");
        }
        if (!subject(order).equals(row.patientId())) {
            throw refused("ServiceRequest.subject", "The order is of another patient.");
        }
        Identifier placer = PlacedOrders.placer(order);
        if (!placer.getValue().equals(row.placer())
                || !placer.getSystem().equals(row.placerSystem())) {
            throw refused("ServiceRequest.identifier", "The order has another number.");
        }
        known.put(PlacedOrders.numbered(order).setStatus(ServiceRequestStatus.ONHOLD));
        return orders.review(known, source, row, contradictions);
    }

    private static ContentError refused(String location, String text) {
        return new ContentError(Problem.error(Kind.CONFLICT, location, text));
    }

    private OrderOutcome cancel(Known known, Source source, OrderRow row) {
        return orders.move(known, source, row, OrderEvent.CANCEL_REQUESTED)
                .map(OrderBook::outcome)
                .orElseThrow(
                        () ->
                                new ContentError(
                                        Transitions.refusal(
                                                row.state(),
                                                OrderEvent.CANCEL_REQUESTED,
                                                "ServiceRequest.status")));
    }

    private static Set<String> patients(List<Resource> resources) {
        var ids = new LinkedHashSet<String>();
        for (Resource resource : resources) {
            if (resource instanceof Patient patient) {
                ids.add(patient.getIdElement().getIdPart());
            } else if (resource instanceof Coverage coverage) {
                ids.add(coverage.getBeneficiary().getReferenceElement().getIdPart());
            } else if (resource instanceof Observation observation) {
                ids.add(observation.getSubject().getReferenceElement().getIdPart());
            }
        }
        ids.remove(null);
        return ids;
    }

    /** A new order is of a patient who is still one. */
    private static String subject(Known known, ServiceRequest order) {
        String id = subject(order);
        if (known.find(Patient.class, id).filter(MergedPatients::isReplaced).isPresent()) {
            throw refused(
                    "ServiceRequest.subject",
                    "The patient was merged into another; its link says into whom.");
        }
        return id;
    }

    private static String subject(ServiceRequest order) {
        String id = order.getSubject().getReferenceElement().getIdPart();
        if (id == null) {
            throw new ContentError(
                    Problem.error(
                            Kind.REQUIRED,
                            "ServiceRequest.subject",
                            "The order does not refer to a patient."));
        }
        return id;
    }
}
