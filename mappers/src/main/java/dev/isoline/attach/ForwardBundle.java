package dev.isoline.attach;

import dev.isoline.fhir.TransactionBundle;
import dev.isoline.order.OrderState;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.hl7.fhir.r4.model.Base;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import org.hl7.fhir.r4.model.Task;

/**
 * The order for the monitoring service: ServiceRequest, Task and everything they refer to, directly
 * or in turn, as one transaction. Organizations and clinicians are created where the service does
 * not know them and otherwise left alone; all the rest is the newest we know.
 */
public final class ForwardBundle {

    private static final Set<String> LEFT_ALONE =
            Set.of("Organization", "Practitioner", "PractitionerRole", "Location");

    private ForwardBundle() {}

    /**
     * @param order with its id, and {@code insurance} naming the coverages to send
     * @param task where it stands, see {@link OrderTask}
     * @param resolve finds the resource of a relative reference; what it does not find is referred
     *     to by identifier
     */
    public static Bundle of(
            ServiceRequest order,
            OrderState state,
            Task task,
            Function<String, Optional<Resource>> resolve) {
        var bundle = new TransactionBundle();
        bundle.update(inState(order, state));
        referredTo(order, resolve).forEach(resource -> add(bundle, resource));
        return bundle.update(task).build();
    }

    private static ServiceRequest inState(ServiceRequest order, OrderState state) {
        return order.copy().setStatus(ServiceRequestStatus.fromCode(state.serviceRequestStatus()));
    }

    private static void add(TransactionBundle bundle, Resource resource) {
        if (LEFT_ALONE.contains(resource.fhirType())) {
            bundle.create(resource);
        } else {
            bundle.update(resource);
        }
    }

    /** Breadth first, in element order: the same order makes the same bundle. */
    private static List<Resource> referredTo(
            ServiceRequest order, Function<String, Optional<Resource>> resolve) {
        var found = new ArrayList<Resource>();
        var seen =
                new HashSet<String>(Set.of("ServiceRequest/" + order.getIdElement().getIdPart()));
        var open = new ArrayDeque<Resource>(List.of(order));
        while (!open.isEmpty()) {
            for (String reference : references(open.remove())) {
                if (seen.add(reference)) {
                    resolve.apply(reference).ifPresent(found::add);
                    resolve.apply(reference).ifPresent(open::add);
                }
            }
        }
        return found;
    }

    private static List<String> references(Base element) {
        var references = new ArrayList<String>();
        if (element instanceof Reference reference && reference.hasReference()) {
            references.add(reference.getReference());
        }
        element.children()
                .forEach(c -> c.getValues().forEach(v -> references.addAll(references(v))));
        return references;
    }
}
