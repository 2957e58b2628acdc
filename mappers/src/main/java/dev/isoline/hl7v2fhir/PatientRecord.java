package dev.isoline.hl7v2fhir;

import java.util.List;
import java.util.Set;
import org.hl7.fhir.r4.model.Coverage;
import org.hl7.fhir.r4.model.DomainResource;
import org.hl7.fhir.r4.model.Patient;

/**
 * What one message tells about a patient. Every resource has an id of its own ({@link
 * dev.isoline.order.StableId}); references between them are relative, such as {@code Patient/…}.
 *
 * @param patient demographics
 * @param coverages in the order of IN1; when not empty they replace what was known before
 * @param related insurers, subscribers, guarantors, next of kin
 * @param cleared paths the sender set to null ({@code ""}), such as {@code Patient.name}
 */
public record PatientRecord(
        Patient patient,
        List<Coverage> coverages,
        List<DomainResource> related,
        Set<String> cleared) {}
