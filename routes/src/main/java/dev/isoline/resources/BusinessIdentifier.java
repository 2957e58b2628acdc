package dev.isoline.resources;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;

/**
 * The identifier that tells which patient or order is meant, whichever protocol it came by
 * (identifier types of HL7 v2 table 0203).
 */
public final class BusinessIdentifier {

    private static final String TYPES = "http://terminology.hl7.org/CodeSystem/v2-0203";

    private static final Map<String, String> PREFERRED =
            Map.of("Patient", "MR", "ServiceRequest", "PLAC");

    private BusinessIdentifier() {}

    /** Whether resources of this type are recognised by an identifier and cannot be without. */
    public static boolean required(String type) {
        return PREFERRED.containsKey(type);
    }

    /** The first MR identifier of a patient, the PLAC identifier of an order, else the first. */
    public static Optional<Identifier> of(Resource resource) {
        String code = PREFERRED.get(resource.fhirType());
        List<Identifier> all = all(resource);
        return all.stream()
                .filter(i -> i.getType().hasCoding(TYPES, code))
                .findFirst()
                .or(() -> all.stream().findFirst());
    }

    /** Every identifier with system and value of a patient or order. */
    public static List<Identifier> all(Resource resource) {
        List<Identifier> identifiers = List.of();
        if (resource instanceof Patient patient) {
            identifiers = patient.getIdentifier();
        } else if (resource instanceof ServiceRequest order) {
            identifiers = order.getIdentifier();
        }
        return identifiers.stream().filter(i -> i.hasSystem() && i.hasValue()).toList();
    }
}
