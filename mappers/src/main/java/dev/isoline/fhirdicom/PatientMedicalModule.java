package dev.isoline.fhirdicom;

import dev.isoline.attach.Pacemaker;
import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;
import dev.isoline.ecgdicom.module.ModuleWriter;
import dev.isoline.fhir.Systems;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.AllergyIntolerance;
import org.hl7.fhir.r4.model.BooleanType;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Observation;

/**
 * Patient Medical, PS3.3 C.2.4, from what came along with the order; what nobody told stays empty.
 */
final class PatientMedicalModule {

    /** Words of SNOMED CT 441509002, the finding a pacemaker is told by. */
    static final String PACEMAKER = "Cardiac pacemaker in situ";

    static final String PACEMAKER_UNKNOWN = "Pacemaker: not known";

    private static final String BODY_WEIGHT = "29463-7";
    private static final String PREGNANCY_STATUS = "82810-3";

    /** Answers by table v2-0136 and by SNOMED CT (from memory). */
    private static final Map<String, Boolean> YES_OR_NO =
            Map.of("Y", true, "N", false, "373066001", true, "373067005", false);

    /** LOINC answers and SNOMED CT findings to (0010,21C0): 1 not, 3 definitely (from memory). */
    private static final Map<String, Integer> PREGNANCY =
            Map.of("LA26683-5", 1, "60001007", 1, "LA15173-0", 3, "77386006", 3);

    private PatientMedicalModule() {}

    static DataSet of(OrderedProcedure ordered) {
        String pacemaker = pacemaker(ordered);
        return new ModuleWriter("Patient Medical (PS3.3 C.2.4)")
                .type2(Tag.PatientState, "")
                .type2(Tag.PregnancyStatus, pregnancy(ordered))
                .type2(Tag.PatientWeight, weight(ordered))
                .type2(Tag.MedicalAlerts, pacemaker)
                .type2(Tag.SpecialNeeds, pacemaker)
                .type2(Tag.Allergies, allergies(ordered))
                .dataSet();
    }

    private static String pacemaker(OrderedProcedure ordered) {
        return Pacemaker.answer(ordered.order(), ordered.resolve())
                .map(answer -> yesOrNo(answer).map(yes -> yes ? PACEMAKER : ""))
                .map(answer -> answer.orElse(PACEMAKER_UNKNOWN))
                .orElse("");
    }

    private static Optional<Boolean> yesOrNo(Observation answer) {
        return answer.getValue() instanceof BooleanType yes
                ? Optional.ofNullable(yes.getValue())
                : codes(answer).map(YES_OR_NO::get).filter(Objects::nonNull).findFirst();
    }

    private static Object weight(OrderedProcedure ordered) {
        return observation(ordered, BODY_WEIGHT)
                .filter(Observation::hasValueQuantity)
                .map(Observation::getValueQuantity)
                .filter(q -> "kg".equals(q.getCode()) && q.hasValue())
                .<Object>map(q -> q.getValue().doubleValue())
                .orElse("");
    }

    private static Object pregnancy(OrderedProcedure ordered) {
        return observation(ordered, PREGNANCY_STATUS).stream()
                .flatMap(PatientMedicalModule::codes)
                .map(PREGNANCY::get)
                .filter(Objects::nonNull)
                .<Object>map(code -> code)
                .findFirst()
                .orElse("");
    }

    private static String allergies(OrderedProcedure ordered) {
        var words =
                ordered.supporting(AllergyIntolerance.class)
                        .map(AllergyIntolerance::getCode)
                        .map(CodeableConceptToCode::words);
        return DescriptiveText.cut(DescriptiveText.joined(words, "; "), DescriptiveText.LO);
    }

    private static Optional<Observation> observation(OrderedProcedure ordered, String loinc) {
        return ordered.supporting(Observation.class)
                .filter(o -> o.getCode().hasCoding(Systems.LOINC, loinc))
                .findFirst();
    }

    private static Stream<String> codes(Observation observation) {
        return observation.getValue() instanceof CodeableConcept concept
                ? concept.getCoding().stream().map(Coding::getCode)
                : Stream.empty();
    }
}
