package dev.isoline.intake;

import dev.isoline.hl7v2fhir.ClinicalOrder;
import dev.isoline.hl7v2fhir.MappedMessage;
import dev.isoline.ledger.OrderTable.OrderRow;
import dev.isoline.ledger.Tables;
import dev.isoline.order.OrderEvent;
import dev.isoline.order.OrderState;
import dev.isoline.order.Problem;
import dev.isoline.order.Problem.Kind;
import dev.isoline.order.Transitions;
import dev.isoline.order.Vocabulary;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Resource;
import org.springframework.stereotype.Component;

/** What HL7 v2 messages and FHIR requests do to patients and orders. */
@Component
public class OrderIntake implements Intake {

    private final OrderBook orders;
    private final PlacedOrders placed;
    private final FhirIntake fhir;

    public OrderIntake(OrderBook orders) {
        this.orders = orders;
        this.placed = new PlacedOrders(orders);
        this.fhir = new FhirIntake(orders, placed);
    }

    @Override
    public List<Problem> message(Tables tables, Source source, MappedMessage message) {
        var known = new Known(tables, source.at());
        var match = PatientRegistry.match(known, message.patient().patient(), Vocabulary.HL7_V2);
        if (message.orders().isEmpty()) {
            PatientRegistry.refuse(match.contradictions());
        }
        // Before the record itself is told its stored id: the orders still name the other.
        refer(message, "Patient/" + match.patientId());
        if (match.contradictions().isEmpty()) {
            PatientRegistry.store(known, message.patient(), match.patientId());
        }
        var told = PatientMerge.merge(known, source, match.patientId(), message);
        for (int i = 0; i < message.orders().size(); i++) {
            told.addAll(order(known, source, message.orders().get(i), match, i + 1).problems());
        }
        if (match.contradictions().isEmpty()) {
            orders.reviewHeld(known, source, match.patientId());
        }
        known.store();
        return told;
    }

    @Override
    public List<OrderOutcome> resources(
            Tables tables, Source source, List<Resource> resources, List<Patient> claimed) {
        var known = new Known(tables, source.at());
        var outcomes = fhir.take(known, source, resources, claimed);
        known.store();
        return outcomes;
    }

    /** Makes the orders speak of the patient the message was matched with. */
    private static void refer(MappedMessage message, String patient) {
        String own = References.to(message.patient().patient());
        for (ClinicalOrder order : message.orders()) {
            References.redirect(order.serviceRequest(), own, patient);
            order.related().forEach(resource -> References.redirect(resource, own, patient));
        }
    }

    private OrderOutcome order(
            Known known,
            Source source,
            ClinicalOrder order,
            PatientRegistry.Match match,
            int sequence) {
        return switch (order.control()) {
            case "NW" -> place(known, source, order, match, sequence);
            case "CA" -> cancel(known, source, order, match, sequence);
            default ->
                    refused(
                            order,
                            Problem.error(
                                    Kind.VALUE,
                                    "ORC[" + sequence + "]-1",
                                    "This order control is not taken here; NW and CA are."));
        };
    }

    private OrderOutcome place(
            Known known,
            Source source,
            ClinicalOrder order,
            PatientRegistry.Match match,
            int sequence) {
        if (existing(known, order).isPresent()) {
            return refused(
                    order,
                    Problem.error(
                            Kind.DUPLICATE_KEY,
                            "ORC[" + sequence + "]-2",
                            "This placer order number is in use; the order there is unchanged."));
        }
        order.related().forEach(known::put);
        return placed.place(
                known, source, order.serviceRequest(), match.patientId(), match.contradictions());
    }

    private OrderOutcome cancel(
            Known known,
            Source source,
            ClinicalOrder order,
            PatientRegistry.Match match,
            int sequence) {
        Optional<OrderRow> row = existing(known, order);
        if (row.isEmpty() || !row.get().patientId().equals(match.patientId())) {
            return refused(
                    order,
                    Problem.error(
                            Kind.UNKNOWN_KEY,
                            "ORC[" + sequence + "]-2",
                            "No order of this patient has this placer order number."));
        }
        return orders.move(known, source, row.get(), OrderEvent.CANCEL_REQUESTED)
                .map(OrderBook::outcome)
                .orElseGet(
                        () ->
                                OrderBook.outcome(
                                        row.get(),
                                        Transitions.refusal(
                                                row.get().state(),
                                                OrderEvent.CANCEL_REQUESTED,
                                                "ORC[" + sequence + "]-1")));
    }

    private static Optional<OrderRow> existing(Known known, ClinicalOrder order) {
        Identifier placer = PlacedOrders.placer(order.serviceRequest());
        return known.tables().orders().byPlacer(placer.getSystem(), placer.getValue());
    }

    private static OrderOutcome refused(ClinicalOrder order, Problem problem) {
        return new OrderOutcome(
                order.serviceRequest().getIdElement().getIdPart(),
                OrderState.REJECTED,
                List.of(problem));
    }
}
