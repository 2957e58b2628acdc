package dev.isoline.hl7v2fhir.datatype;

import static dev.isoline.hl7v2fhir.datatype.CeToCodeableConcept.coding;

import ca.uhn.hl7v2.model.v251.datatype.CWE;
import java.util.Optional;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;

/**
 * CWE (HL7 v2.5.1 ch. 2.A.13) to CodeableConcept. Rows: CWE[CodeableConcept];
 * docs/mappings/cwe-to-codeableconcept.md.
 */
public final class CweToCodeableConcept {

    private CweToCodeableConcept() {}

    /** Empty when the field is. */
    public static Optional<CodeableConcept> map(CWE cwe) {
        var concept = new CodeableConcept();
        concept.setText(StToString.map(cwe.getCwe9_OriginalText()));
        Coding first =
                coding(
                        concept,
                        cwe.getCwe1_Identifier(),
                        cwe.getCwe2_Text(),
                        cwe.getCwe3_NameOfCodingSystem());
        version(first, StToString.map(cwe.getCwe7_CodingSystemVersionID()));
        Coding second =
                coding(
                        concept,
                        cwe.getCwe4_AlternateIdentifier(),
                        cwe.getCwe5_AlternateText(),
                        cwe.getCwe6_NameOfAlternateCodingSystem());
        version(second, StToString.map(cwe.getCwe8_AlternateCodingSystemVersionID()));
        return concept.isEmpty() ? Optional.empty() : Optional.of(concept);
    }

    private static void version(Coding coding, String version) {
        if (coding != null && coding.hasSystem()) {
            coding.setVersion(version);
        }
    }
}
