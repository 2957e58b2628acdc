package dev.isoline.intake;

import dev.isoline.fhir.BusinessIdentifier;
import dev.isoline.fhir.Systems;
import dev.isoline.ledger.OrderTable.OrderRow;
import dev.isoline.order.OrderState;
import dev.isoline.order.Problem;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.ServiceRequest;

/** Enters new orders: numbers of our own, the row, the first judgement. */
final class PlacedOrders {

    /** Namespace of the filler order numbers given here. */
    static final String FILLER_SYSTEM = "https://isoline.example/fhir/filler-order-number";

    /** Namespace of the accession numbers given here. */
    static final String ACCESSION_SYSTEM = "https://isoline.example/fhir/accession-number";

    private final OrderBook orders;

    PlacedOrders(OrderBook orders) {
        this.orders = orders;
    }

    OrderOutcome place(
            Known known,
            Source source,
            ServiceRequest order,
            String patientId,
            List<Problem> contradictions) {
        String id = order.getIdElement().getIdPart();
        var numbered = numbered(order);
        known.put(numbered);
        Identifier placer = placer(order);
        var row =
                new OrderRow(
                        id,
                        source.sender(),
                        placer.getSystem(),
                        placer.getValue(),
                        filler(numbered, id),
                        accession(numbered, id),
                        patientId,
                        OrderState.RECEIVED,
                        List.of(),
                        null,
                        known.at());
        known.tables().orders().insert(row);
        return orders.review(known, source, row, contradictions);
    }

    /** The order with the numbers given here, which its sender need not repeat. */
    static ServiceRequest numbered(ServiceRequest order) {
        String id = order.getIdElement().getIdPart();
        var numbered = order.copy();
        filler(numbered, id);
        accession(numbered, id);
        return numbered;
    }

    private static String filler(ServiceRequest order, String id) {
        return number(order, "FILL", FILLER_SYSTEM, OrderNumbers.filler(id));
    }

    private static String accession(ServiceRequest order, String id) {
        return number(order, "ACSN", ACCESSION_SYSTEM, OrderNumbers.accession(id));
    }

    /** The placer order number; an order without one goes by its id. */
    static Identifier placer(ServiceRequest order) {
        return identifier(order, "PLAC")
                .or(() -> BusinessIdentifier.find(order))
                .orElseGet(
                        () ->
                                new Identifier()
                                        .setSystem(Systems.URI)
                                        .setValue("urn:uuid:" + order.getIdElement().getIdPart()));
    }

    /** The number of this type the order has, or gets. */
    private static String number(ServiceRequest order, String type, String system, String value) {
        return identifier(order, type)
                .orElseGet(
                        () ->
                                order.addIdentifier()
                                        .setType(typeOf(type))
                                        .setSystem(system)
                                        .setValue(value))
                .getValue();
    }

    private static Optional<Identifier> identifier(ServiceRequest order, String type) {
        return order.getIdentifier().stream()
                .filter(i -> i.hasSystem() && i.hasValue())
                .filter(i -> BusinessIdentifier.hasType(i, type))
                .findFirst();
    }

    private static CodeableConcept typeOf(String type) {
        return new CodeableConcept(new Coding().setSystem(Systems.IDENTIFIER_TYPE).setCode(type));
    }
}
