package dev.isoline.hl7v2fhir;

import ca.uhn.hl7v2.model.Type;
import ca.uhn.hl7v2.model.v251.segment.PID;
import dev.isoline.hl7v2fhir.datatype.StToString;
import java.util.Set;
import java.util.TreeSet;

/** PID fields that hold the HL7 null (HL7 v2.5.1 ch. 2.5.3), as the paths of Patient it deletes. */
final class ClearedFields {

    private final Set<String> paths = new TreeSet<>();

    private ClearedFields() {}

    static Set<String> of(PID pid) {
        var cleared = new ClearedFields();
        cleared.add("Patient.name", pid.getPid5_PatientName());
        cleared.add("Patient.birthDate", pid.getPid7_DateTimeOfBirth());
        cleared.add("Patient.gender", pid.getPid8_AdministrativeSex());
        cleared.add("Patient.address", pid.getPid11_PatientAddress());
        cleared.add("Patient.telecom", pid.getPid13_PhoneNumberHome());
        cleared.add("Patient.telecom", pid.getPid14_PhoneNumberBusiness());
        cleared.add("Patient.communication", pid.getPid15_PrimaryLanguage());
        cleared.add("Patient.maritalStatus", pid.getPid16_MaritalStatus());
        cleared.add("Patient.multipleBirth", pid.getPid24_MultipleBirthIndicator());
        cleared.add("Patient.deceased", pid.getPid29_PatientDeathDateAndTime());
        cleared.add("Patient.deceased", pid.getPid30_PatientDeathIndicator());
        return cleared.paths;
    }

    private void add(String path, Type... repetitions) {
        if (repetitions.length == 1 && StToString.isNull(repetitions[0])) {
            paths.add(path);
        }
    }
}
