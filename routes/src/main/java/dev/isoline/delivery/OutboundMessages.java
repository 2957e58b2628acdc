package dev.isoline.delivery;

import dev.isoline.fhirhl7v2.DiagnosticReportToOruR01;
import dev.isoline.fhirhl7v2.MessageContext;
import dev.isoline.fhirhl7v2.TaskToOrderStatus;
import dev.isoline.order.StableId;
import dev.isoline.resources.OrderResources;
import dev.isoline.settings.IsolineProperties.Destination;
import dev.isoline.settings.Senders;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;
import org.springframework.stereotype.Component;

/** The HL7 v2 messages to a clinic, under control ids derived from what they tell. */
@Component
public class OutboundMessages {

    private final Senders senders;

    public OutboundMessages(Senders senders) {
        this.senders = senders;
    }

    /** ORU^R01 of a report. */
    byte[] result(String name, Destination to, OrderResources order, Bundle report, Instant at) {
        String id = StableId.of("ORU", name, order.row().id(), at.toString());
        return DiagnosticReportToOruR01.map(report, context(id, to, order, at));
    }

    /** Order status; empty for a state that no one is told of. */
    Optional<byte[]> status(String name, Destination to, OrderResources order, Instant at) {
        String state = order.row().state().name();
        String id = StableId.of("status", name, order.row().id(), state, at.toString());
        return TaskToOrderStatus.map(
                order.task(), order.serviceRequest(), order.patient(), context(id, to, order, at));
    }

    /** MSH-10 holds 20 characters (HL7 v2.5.1 ch. 2.15.9.10): the first 64 bits of the id. */
    private MessageContext context(String id, Destination to, OrderResources order, Instant at) {
        var sender = senders.byName(order.row().sender());
        return new MessageContext(
                id.replace("-", "").substring(0, 16).toUpperCase(Locale.ROOT),
                at,
                "ISOLINE",
                "",
                to.application(),
                to.facility(),
                sender.authorities());
    }
}
