package dev.isoline.fhirdicom;

import dev.isoline.ecgdicom.OrderContext.Code;
import dev.isoline.fhirdicom.ProcedureCode.Coded;
import java.util.Objects;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;

/** CodeableConcept (FHIR R4) to an item of a code sequence, PS3.3 8.8, or to words alone. */
final class CodeableConceptToCode {

    private CodeableConceptToCode() {}

    static Code map(CodeableConcept concept) {
        var codings =
                concept.getCoding().stream()
                        .map(
                                c ->
                                        new Coded(
                                                text(c.getSystem()),
                                                text(c.getCode()),
                                                text(c.getDisplay())))
                        .toList();
        return ProcedureCode.of(codings, text(concept.getText()));
    }

    /** The concept's own text, else the first display, else the first code. */
    static String words(CodeableConcept concept) {
        return Stream.of(
                        Stream.of(text(concept.getText())),
                        concept.getCoding().stream().map(Coding::getDisplay),
                        concept.getCoding().stream().map(Coding::getCode))
                .flatMap(words -> words)
                .filter(Objects::nonNull)
                .filter(words -> !words.isBlank())
                .findFirst()
                .orElse("");
    }

    private static String text(String value) {
        return Objects.requireNonNullElse(value, "");
    }
}
