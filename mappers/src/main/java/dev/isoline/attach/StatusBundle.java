package dev.isoline.attach;

import dev.isoline.fhir.BusinessIdentifier;
import dev.isoline.fhir.TransactionBundle;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.Task;

/**
 * Where an order stands, for whoever placed it or works on it: its Task alone. Order and patient
 * are referred to by their business identifiers, which the receiver knows; ours it need not.
 */
public final class StatusBundle {

    private StatusBundle() {}

    /**
     * @param task see {@link OrderTask}
     */
    public static Bundle of(Task task, ServiceRequest order, Patient patient) {
        Task told = task.copy();
        told.setFocus(logical(order));
        told.getBasedOn().clear();
        told.addBasedOn(logical(order));
        told.setFor(logical(patient));
        return new TransactionBundle().update(told).build();
    }

    private static Reference logical(Resource resource) {
        var reference = new Reference().setType(resource.fhirType());
        BusinessIdentifier.find(resource).ifPresent(i -> reference.setIdentifier(i.copy()));
        return reference;
    }
}
