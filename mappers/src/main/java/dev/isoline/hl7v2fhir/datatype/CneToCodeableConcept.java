package dev.isoline.hl7v2fhir.datatype;

import static dev.isoline.hl7v2fhir.datatype.CeToCodeableConcept.coding;

import ca.uhn.hl7v2.model.v251.datatype.CNE;
import java.util.Optional;
import org.hl7.fhir.r4.model.CodeableConcept;

/** CNE (HL7 v2.5.1 ch. 2.A.8) to CodeableConcept, as CE. */
public final class CneToCodeableConcept {

    private CneToCodeableConcept() {}

    /** Empty when the field is. */
    public static Optional<CodeableConcept> map(CNE cne) {
        var concept = new CodeableConcept();
        concept.setText(StToString.map(cne.getCne9_OriginalText()));
        coding(
                concept,
                cne.getCne1_Identifier(),
                cne.getCne2_Text(),
                cne.getCne3_NameOfCodingSystem());
        coding(
                concept,
                cne.getCne4_AlternateIdentifier(),
                cne.getCne5_AlternateText(),
                cne.getCne6_NameOfAlternateCodingSystem());
        return concept.isEmpty() ? Optional.empty() : Optional.of(concept);
    }
}
