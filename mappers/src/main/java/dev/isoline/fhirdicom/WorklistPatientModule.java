package dev.isoline.fhirdicom;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;
import dev.isoline.ecgdicom.OrderContext.Identifier;
import dev.isoline.ecgdicom.module.CodeItems;
import dev.isoline.ecgdicom.module.ModuleWriter;
import java.util.List;
import java.util.Set;

/** Patient Identification, Demographic and Medical, PS3.3 C.2.2 to C.2.4, as a worklist has it. */
final class WorklistPatientModule {

    /** Types of other numbers a recorder station may need (v2-0203); no insurance, no tax. */
    private static final Set<String> OTHER_NUMBERS = Set.of("MR", "PI");

    private WorklistPatientModule() {}

    static DataSet of(OrderedProcedure ordered) {
        return identification(ordered)
                .putAll(demographic(ordered))
                .putAll(PatientMedicalModule.of(ordered));
    }

    private static DataSet identification(OrderedProcedure ordered) {
        var patient = ordered.context().patient();
        var issuer = patient.id().authority();
        return new ModuleWriter("Patient Identification (PS3.3 C.2.2)")
                .type1(Tag.PatientName, patient.name())
                .type1(Tag.PatientID, patient.id().value())
                .type3(Tag.IssuerOfPatientID, issuer.name())
                .type3(Tag.IssuerOfPatientIDQualifiersSequence, CodeItems.authority(issuer))
                .type3(Tag.OtherPatientIDsSequence, otherNumbers(ordered, patient.id()))
                .type2(Tag.ReferencedPatientSequence, List.of())
                .dataSet();
    }

    private static DataSet demographic(OrderedProcedure ordered) {
        var patient = ordered.context().patient();
        return new ModuleWriter("Patient Demographic (PS3.3 C.2.3)")
                .type2(Tag.PatientBirthDate, patient.birthDate())
                .type2(Tag.PatientSex, patient.sex())
                .type2(Tag.ConfidentialityConstraintOnPatientDataDescription, "")
                .dataSet();
    }

    private static List<DataSet> otherNumbers(OrderedProcedure ordered, Identifier own) {
        return OrderIdentifiers.ofTypes(OTHER_NUMBERS, ordered.patient().getIdentifier()).stream()
                .filter(number -> !number.equals(own))
                .map(WorklistPatientModule::otherNumber)
                .toList();
    }

    private static DataSet otherNumber(Identifier number) {
        var issuer = number.authority();
        return new ModuleWriter("Other Patient IDs (PS3.3 C.2.2)")
                .type1(Tag.PatientID, number.value())
                .type3(Tag.IssuerOfPatientID, issuer.name())
                .type1(Tag.TypeOfPatientID, "TEXT")
                .type3(Tag.IssuerOfPatientIDQualifiersSequence, CodeItems.authority(issuer))
                .dataSet();
    }
}
