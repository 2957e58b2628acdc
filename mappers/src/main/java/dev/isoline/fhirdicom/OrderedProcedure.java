package dev.isoline.fhirdicom;

import dev.isoline.ecgdicom.OrderContext;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Condition;
import org.hl7.fhir.r4.model.Encounter;
import org.hl7.fhir.r4.model.Organization;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Practitioner;
import org.hl7.fhir.r4.model.PractitionerRole;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;

/**
 * An order, whom it is for and what it refers to.
 *
 * @param resolve finds the resource of a relative reference
 * @param context the identifiers its DICOM objects will carry: the worklist item carries the same
 */
record OrderedProcedure(
        ServiceRequest order,
        Patient patient,
        Function<String, Optional<Resource>> resolve,
        OrderContext context) {

    static OrderedProcedure of(
            ServiceRequest order, Patient patient, Function<String, Optional<Resource>> resolve) {
        var bare = new OrderedProcedure(order, patient, resolve, null);
        var requester = bare.practitioner(order.getRequester()).orElse(null);
        var visit = bare.encounter().orElse(null);
        var context = ServiceRequestToOrderContext.map(order, patient, requester, visit);
        return new OrderedProcedure(order, patient, resolve, context);
    }

    Optional<Encounter> encounter() {
        return find(order.getEncounter(), Encounter.class);
    }

    /** The person a reference means, also by way of the role they have. */
    Optional<Practitioner> practitioner(Reference reference) {
        return find(reference, PractitionerRole.class)
                .map(PractitionerRole::getPractitioner)
                .or(() -> Optional.of(reference))
                .flatMap(r -> find(r, Practitioner.class));
    }

    /** Name of the organization that asks. */
    String requestingService() {
        return find(order.getRequester(), PractitionerRole.class)
                .map(PractitionerRole::getOrganization)
                .or(() -> Optional.of(order.getRequester()))
                .flatMap(r -> find(r, Organization.class))
                .map(Organization::getName)
                .orElse("");
    }

    /** What came along with the order, of one type. */
    <R extends Resource> Stream<R> supporting(Class<R> type) {
        return order.getSupportingInfo().stream().flatMap(r -> find(r, type).stream());
    }

    /** Why it was ordered: reasonCode, then the conditions of reasonReference. */
    List<CodeableConcept> reasons() {
        return Stream.concat(
                        order.getReasonCode().stream(),
                        order.getReasonReference().stream()
                                .flatMap(r -> find(r, Condition.class).stream())
                                .map(Condition::getCode))
                .toList();
    }

    <R extends Resource> Optional<R> find(Reference reference, Class<R> type) {
        return Optional.ofNullable(reference.getReference())
                .flatMap(resolve)
                .filter(type::isInstance)
                .map(type::cast);
    }
}
