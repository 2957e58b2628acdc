package dev.isoline.hl7v2fhir.datatype;

import ca.uhn.hl7v2.model.v251.datatype.CE;
import dev.isoline.hl7v2fhir.table.Table0296;
import java.util.Optional;
import org.hl7.fhir.r4.model.CodeableConcept;

/** CE of a language (PID-15, NK1-20) to CodeableConcept: R4 takes BCP 47 codes and no others. */
public final class LanguageToCodeableConcept {

    private LanguageToCodeableConcept() {}

    /** Empty when the field is; a code that is no language code stays as text, with a note. */
    public static Optional<CodeableConcept> map(CE ce, Reading in) {
        String code = StToString.map(ce.getCe1_Identifier());
        String text = StToString.map(ce.getCe2_Text());
        if (code == null) {
            return Optional.ofNullable(text).map(t -> new CodeableConcept().setText(t));
        }
        var concept = new CodeableConcept().setText(text);
        Table0296.toFhir(code)
                .ifPresentOrElse(
                        c -> concept.addCoding().setSystem(Table0296.SYSTEM).setCode(c),
                        () -> unknown(concept, code, in));
        return Optional.of(concept);
    }

    private static void unknown(CodeableConcept concept, String code, Reading in) {
        in.note(1, "carried as text: not an ISO 639 language code");
        if (!concept.hasText()) {
            concept.setText(code);
        }
    }
}
