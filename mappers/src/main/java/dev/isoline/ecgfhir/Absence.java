package dev.isoline.ecgfhir;

import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;

/**
 * Why there is no value (FHIR R4 data-absent-reason).
 *
 * @param code {@code unknown}: it could not be measured; {@code not-performed}: nobody looked
 * @param reason one sentence
 */
record Absence(String code, String reason) {

    /** Beats are N, S, V, F or Q by a person, another program or this one. */
    static final Absence UNCLASSIFIED = notPerformed("Nobody classified the beats.");

    static Absence unknown(String reason) {
        return new Absence("unknown", reason);
    }

    static Absence notPerformed(String reason) {
        return new Absence("not-performed", reason);
    }

    CodeableConcept concept() {
        String system = "http://terminology.hl7.org/CodeSystem/data-absent-reason";
        return new CodeableConcept(new Coding(system, code, null)).setText(reason);
    }
}
