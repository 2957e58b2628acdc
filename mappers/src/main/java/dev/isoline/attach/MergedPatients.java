package dev.isoline.attach;

import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Identifier.IdentifierUse;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Patient.LinkType;
import org.hl7.fhir.r4.model.Reference;

/**
 * Two patients that turn out to be one: the one that stays carries the other's identifiers as old
 * ones, the other stays readable, inactive and linked (FHIR R4 Patient.link).
 */
public final class MergedPatients {

    private MergedPatients() {}

    /** Whether the patient became another one. */
    public static boolean isReplaced(Patient patient) {
        return patient.getLink().stream().anyMatch(link -> link.getType() == LinkType.REPLACEDBY);
    }

    /** The patient that is no longer used. */
    public static Patient replaced(Patient prior, Patient survivor) {
        return linked(prior, survivor, LinkType.REPLACEDBY).setActive(false);
    }

    /** The patient that stays. */
    public static Patient survivor(Patient survivor, Patient prior) {
        Patient merged = linked(survivor, prior, LinkType.REPLACES);
        for (Identifier identifier : prior.getIdentifier()) {
            merged = withOld(merged, identifier);
        }
        return merged;
    }

    /** A message or a recording may still carry the number. */
    public static Patient withOld(Patient patient, Identifier identifier) {
        Patient known = patient.copy();
        if (known.getIdentifier().stream()
                .noneMatch(own -> PatientUpdate.isSame(own, identifier))) {
            known.addIdentifier(identifier.copy().setUse(IdentifierUse.OLD));
        }
        return known;
    }

    private static Patient linked(Patient patient, Patient other, LinkType type) {
        Patient linked = patient.copy();
        linked.addLink()
                .setOther(new Reference("Patient/" + other.getIdElement().getIdPart()))
                .setType(type);
        return linked;
    }
}
