package dev.isoline.fhirdicom;

import dev.isoline.ecgdicom.OrderContext.Code;
import java.util.Map;
import java.util.Objects;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;

/**
 * CodeableConcept (FHIR R4) to a DICOM code: the first coding of a system that has a coding scheme
 * designator (PS3.16 table 8-1) and a value of at most 16 characters; else the meaning alone.
 */
final class CodeableConceptToCode {

    private static final int LONGEST_SH = 16;
    private static final int LONGEST_LO = 64;

    /** Designators from memory. */
    private static final Map<String, String> SCHEMES =
            Map.of(
                    "http://loinc.org", "LN",
                    "http://snomed.info/sct", "SCT",
                    "http://www.ama-assn.org/go/cpt", "C4");

    private CodeableConceptToCode() {}

    static Code map(CodeableConcept concept) {
        return concept.getCoding().stream()
                .filter(coding -> coding.hasSystem() && SCHEMES.containsKey(coding.getSystem()))
                .filter(coding -> coding.hasCode() && coding.getCode().length() <= LONGEST_SH)
                .findFirst()
                .map(
                        coding ->
                                new Code(
                                        coding.getCode(),
                                        SCHEMES.get(coding.getSystem()),
                                        meaning(concept, coding)))
                .orElseGet(() -> new Code("", "", meaning(concept)));
    }

    private static String meaning(CodeableConcept concept) {
        return concept.getCoding().stream()
                .filter(Coding::hasDisplay)
                .findFirst()
                .map(coding -> words(coding.getDisplay()))
                .orElseGet(() -> words(concept.getText()));
    }

    private static String meaning(CodeableConcept concept, Coding coding) {
        return coding.hasDisplay() ? words(coding.getDisplay()) : meaning(concept);
    }

    private static String words(String text) {
        String clean =
                Objects.requireNonNullElse(text, "").replaceAll("[\\p{Cntrl}\\\\]", " ").strip();
        return clean.substring(0, Math.min(LONGEST_LO, clean.length())).strip();
    }
}
