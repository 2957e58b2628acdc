package dev.isoline.hl7v2fhir;

import static dev.isoline.hl7v2fhir.Fields.on;

import ca.uhn.hl7v2.model.v251.segment.DG1;
import dev.isoline.hl7v2fhir.datatype.CeToCodeableConcept;
import dev.isoline.hl7v2fhir.datatype.EiToIdentifier;
import dev.isoline.hl7v2fhir.datatype.Reading;
import dev.isoline.hl7v2fhir.datatype.StToString;
import dev.isoline.hl7v2fhir.datatype.TsToDateTime;
import java.util.Optional;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Condition;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Reference;

/**
 * DG1 (HL7 v2.5.1 ch. 6.5.2) to Condition. Rows: DG1[Condition]. Left out, and why:
 * docs/mappings/dg1-to-condition.md.
 */
public final class Dg1ToCondition {

    private static final String CATEGORIES =
            "http://terminology.hl7.org/CodeSystem/condition-category";
    private static final String CLINICAL =
            "http://terminology.hl7.org/CodeSystem/condition-clinical";
    private static final String VERIFICATION =
            "http://terminology.hl7.org/CodeSystem/condition-ver-status";

    private Dg1ToCondition() {}

    /**
     * @param practitioners takes DG1-16
     * @return empty when neither DG1-3 nor DG1-4 says what it is
     */
    public static Optional<Condition> map(
            DG1 dg1, String id, Reference patient, Practitioners practitioners, Reading in) {
        var condition = new Condition();
        on(dg1.getDg13_DiagnosisCodeDG1(), CeToCodeableConcept::map, condition::setCode);
        String description = StToString.map(dg1.getDg14_DiagnosisDescription());
        if (description != null) {
            condition.getCode().setText(description);
        }
        if (condition.isEmpty()) {
            return Optional.empty();
        }
        condition.setSubject(patient).setId(id);
        condition.addCategory(coded(CATEGORIES, "encounter-diagnosis"));
        status(dg1, condition);
        // spotless:off
        on(dg1.getDg15_DiagnosisDateTime(), f -> TsToDateTime.map(f, in.at("DG1-5")), condition::setOnset);
        practitioners.first(dg1.getDg116_DiagnosingClinician(), "DG1-16").ifPresent(condition::setAsserter);
        on(dg1.getDg119_AttestationDateTime(), f -> TsToDateTime.map(f, in.at("DG1-19")), condition::setRecordedDateElement);
        on(dg1.getDg120_DiagnosisIdentifier(), f -> EiToIdentifier.map(f, null, in.at("DG1-20")), (Identifier f) -> condition.addIdentifier(f));
        // spotless:on
        return Optional.of(condition);
    }

    /** con-5: a condition entered in error has no clinical status, any other one has (con-3). */
    private static void status(DG1 dg1, Condition condition) {
        if ("D".equals(StToString.map(dg1.getDg121_DiagnosisActionCode()))) {
            condition.setVerificationStatus(coded(VERIFICATION, "entered-in-error"));
        } else {
            condition.setClinicalStatus(coded(CLINICAL, "active"));
        }
    }

    private static CodeableConcept coded(String system, String code) {
        return new CodeableConcept(new Coding().setSystem(system).setCode(code));
    }
}
