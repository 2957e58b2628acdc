package dev.isoline.hl7v2fhir.table;

import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.Coding;

/** Rows of a concept map from an HL7 table to codings of terminology.hl7.org. */
final class CodingRows {

    private CodingRows() {}

    /**
     * @param system last part of its canonical
     */
    static Map.Entry<String, Coding> row(
            String code, String system, String target, String display) {
        return Map.entry(
                code,
                new Coding("http://terminology.hl7.org/CodeSystem/" + system, target, display));
    }

    /** A copy, for FHIR's objects can be changed; empty for a code without a row. */
    static Optional<Coding> find(Map<String, Coding> rows, String code) {
        return Optional.ofNullable(rows.get(code)).map(Coding::copy);
    }
}
