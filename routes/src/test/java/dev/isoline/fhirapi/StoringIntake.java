package dev.isoline.fhirapi;

import dev.isoline.hl7v2fhir.MappedMessage;
import dev.isoline.intake.Intake;
import dev.isoline.intake.OrderOutcome;
import dev.isoline.intake.Source;
import dev.isoline.ledger.Tables;
import dev.isoline.order.OrderState;
import dev.isoline.order.Problem;
import dev.isoline.resources.ResourceStore;
import java.util.List;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;

/** The simplest intake: stores everything, and holds an order that names no insurance. */
final class StoringIntake implements Intake {

    @Override
    public List<OrderOutcome> message(Tables tables, Source source, MappedMessage message) {
        throw new UnsupportedOperationException("No HL7 v2 in these tests");
    }

    @Override
    public List<OrderOutcome> resources(Tables tables, Source source, List<Resource> resources) {
        resources.forEach(r -> ResourceStore.put(tables, r, source.at()));
        return resources.stream()
                .filter(ServiceRequest.class::isInstance)
                .map(ServiceRequest.class::cast)
                .map(StoringIntake::judge)
                .toList();
    }

    private static OrderOutcome judge(ServiceRequest order) {
        String id = order.getIdElement().getIdPart();
        return order.hasInsurance()
                ? new OrderOutcome(id, OrderState.ACCEPTED, List.of())
                : new OrderOutcome(
                        id,
                        OrderState.ON_HOLD,
                        List.of(
                                Problem.error(
                                        Problem.Kind.REQUIRED,
                                        "ServiceRequest.insurance",
                                        "The order names no insurance.")));
    }
}
