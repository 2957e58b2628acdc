package dev.isoline.hl7v2fhir.datatype;

import ca.uhn.hl7v2.model.Primitive;
import ca.uhn.hl7v2.model.v251.datatype.CE;
import dev.isoline.hl7v2fhir.table.Table0396;
import java.util.Optional;
import java.util.regex.Pattern;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;

/**
 * CE (HL7 v2.5.1 ch. 2.A.3) to CodeableConcept. Rows: CE[CodeableConcept];
 * docs/mappings/ce-to-codeableconcept.md.
 */
public final class CeToCodeableConcept {

    /** A FHIR code holds single blanks only. */
    private static final Pattern BLANKS = Pattern.compile("\\s+");

    private CeToCodeableConcept() {}

    /** Empty when the field is. */
    public static Optional<CodeableConcept> map(CE ce) {
        var concept = new CodeableConcept();
        coding(concept, ce.getCe1_Identifier(), ce.getCe2_Text(), ce.getCe3_NameOfCodingSystem());
        coding(
                concept,
                ce.getCe4_AlternateIdentifier(),
                ce.getCe5_AlternateText(),
                ce.getCe6_NameOfAlternateCodingSystem());
        return concept.isEmpty() ? Optional.empty() : Optional.of(concept);
    }

    /**
     * Adds one coding. A text without a code is the concept's text; so is the sender's text for a
     * code of an HL7 table, whose display is the table's.
     *
     * @return the coding, null when there is no code
     */
    static Coding coding(CodeableConcept concept, Primitive code, Primitive text, Primitive name) {
        String value = StToString.map(code);
        String display = StToString.map(text);
        if (value == null) {
            text(concept, display);
            return null;
        }
        String system = StToString.map(name);
        Coding coding = concept.addCoding().setCode(BLANKS.matcher(value).replaceAll(" "));
        if (system != null) {
            coding.setSystem(Table0396.toFhir(system));
        }
        if (coding.hasSystem() && coding.getSystem().startsWith("http://terminology.hl7.org/")) {
            text(concept, display);
        } else {
            coding.setDisplay(display);
        }
        return coding;
    }

    static void text(CodeableConcept concept, String text) {
        if (text != null && !concept.hasText()) {
            concept.setText(text);
        }
    }
}
