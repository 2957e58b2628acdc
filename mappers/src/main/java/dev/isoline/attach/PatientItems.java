package dev.isoline.attach;

import dev.isoline.fhir.BusinessIdentifier;
import dev.isoline.order.Requirement;
import java.util.EnumSet;
import java.util.Set;
import org.hl7.fhir.r4.model.HumanName;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Patient;

/** Required items that stand in Patient. */
final class PatientItems {

    private PatientItems() {}

    static Set<Requirement> of(Patient patient) {
        var present = EnumSet.noneOf(Requirement.class);
        if (patient.getName().stream().anyMatch(HumanName::hasFamily)) {
            present.add(Requirement.PATIENT_NAME);
        }
        if (patient.getIdentifier().stream().anyMatch(PatientItems::isRecordNumber)) {
            present.add(Requirement.MEDICAL_RECORD_NUMBER);
        }
        if (patient.hasBirthDate()) {
            present.add(Requirement.BIRTH_DATE);
        }
        if (patient.hasGender()) {
            present.add(Requirement.SEX);
        }
        return present;
    }

    /**
     * CX-5 is often left out, so an identifier of no stated type counts; one of another does not.
     */
    private static boolean isRecordNumber(Identifier identifier) {
        return identifier.hasSystem()
                && identifier.hasValue()
                && (!identifier.hasType() || BusinessIdentifier.hasType(identifier, "MR"));
    }
}
