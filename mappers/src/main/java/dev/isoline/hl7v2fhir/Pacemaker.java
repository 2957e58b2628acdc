package dev.isoline.hl7v2fhir;

import ca.uhn.hl7v2.model.Varies;
import ca.uhn.hl7v2.model.v251.segment.OBX;
import dev.isoline.hl7v2fhir.datatype.Reading;
import dev.isoline.hl7v2fhir.datatype.StToString;
import dev.isoline.hl7v2fhir.table.Table0136;
import java.util.Locale;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Observation;

/**
 * The answer to "does the patient have a pacemaker": an OBX with SNOMED CT 441509002 (from memory)
 * and Y, N or unknown. Our own convention, docs/mappings/obx-to-observation.md.
 */
final class Pacemaker {

    private static final String CODE = "441509002";

    private Pacemaker() {}

    static boolean is(CodeableConcept code) {
        return code.getCoding().stream().anyMatch(c -> CODE.equals(c.getCode()));
    }

    static void value(OBX obx, Observation observation, Reading in) {
        Varies[] values = obx.getObx5_ObservationValue();
        String sent = values.length == 0 ? null : StToString.first(values[0]);
        String answer = sent == null ? "" : sent.toUpperCase(Locale.ROOT);
        switch (answer) {
            case "Y", "YES" -> observation.setValue(answer(Table0136.SYSTEM, "Y"));
            case "N", "NO" -> observation.setValue(answer(Table0136.SYSTEM, "N"));
            case "U", "UNK", "UNKNOWN" ->
                    observation.setValue(
                            answer("http://terminology.hl7.org/CodeSystem/v3-NullFlavor", "UNK"));
            default -> in.at("OBX-5").note("left out: a pacemaker answer is Y, N or U");
        }
    }

    private static CodeableConcept answer(String system, String code) {
        return new CodeableConcept(new Coding().setSystem(system).setCode(code));
    }
}
