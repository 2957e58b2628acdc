package dev.isoline.fhirhl7v2;

import ca.uhn.hl7v2.model.DataTypeException;
import ca.uhn.hl7v2.model.v251.segment.PID;
import org.hl7.fhir.r4.model.Identifier.IdentifierUse;
import org.hl7.fhir.r4.model.Patient;

/**
 * Patient (FHIR R4) to PID (HL7 v2.5.1 ch. 3.4.2): what identifies the patient, as the clinic sent
 * it, and no more. Rows: docs/mappings/report-to-oru.md.
 */
final class PatientToPid {

    private PatientToPid() {}

    static void map(Patient patient, PID pid, DataTypes types) throws DataTypeException {
        pid.getPid1_SetIDPID().setValue("1");
        for (var identifier : patient.getIdentifier()) {
            if (identifier.getUse() != IdentifierUse.OLD) {
                types.cx(
                        identifier,
                        pid.getPid3_PatientIdentifierList(pid.getPid3_PatientIdentifierListReps()));
            }
        }
        for (var name : patient.getName()) {
            DataTypes.xpn(name, pid.getPid5_PatientName(pid.getPid5_PatientNameReps()));
        }
        DateTimeToTs.map(patient.getBirthDateElement(), pid.getPid7_DateTimeOfBirth());
        pid.getPid8_AdministrativeSex().setValue(Tables.sex(patient.getGender()));
    }
}
