package dev.isoline.hl7v2fhir;

import java.util.List;
import org.hl7.fhir.r4.model.DomainResource;
import org.hl7.fhir.r4.model.ServiceRequest;

/**
 * One ORC with its OBR and what hangs on it.
 *
 * @param control ORC-1, HL7 table 0119: {@code NW}, {@code CA}
 * @param serviceRequest the order; subject and insurance refer to {@code patient}
 * @param patient who it is for
 * @param related requester, conditions, observations, encounter
 */
public record ClinicalOrder(
        String control,
        ServiceRequest serviceRequest,
        PatientRecord patient,
        List<DomainResource> related) {}
