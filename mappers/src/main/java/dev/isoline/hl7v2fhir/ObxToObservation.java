package dev.isoline.hl7v2fhir;

import static dev.isoline.hl7v2fhir.Fields.each;
import static dev.isoline.hl7v2fhir.Fields.on;

import ca.uhn.hl7v2.model.v251.datatype.CE;
import ca.uhn.hl7v2.model.v251.segment.OBX;
import dev.isoline.hl7v2fhir.datatype.CeToCodeableConcept;
import dev.isoline.hl7v2fhir.datatype.Reading;
import dev.isoline.hl7v2fhir.datatype.StToString;
import dev.isoline.hl7v2fhir.datatype.TsToDateTime;
import dev.isoline.hl7v2fhir.table.Table0078;
import dev.isoline.hl7v2fhir.table.Table0085;
import java.util.Optional;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.Reference;

/**
 * OBX (HL7 v2.5.1 ch. 7.4.2) under an order to Observation. Rows: OBX[Observation]. Left out, and
 * why: docs/mappings/obx-to-observation.md.
 */
public final class ObxToObservation {

    private ObxToObservation() {}

    /**
     * @param practitioners takes OBX-16
     * @return empty when OBX-3 does not say what was observed
     */
    public static Optional<Observation> map(
            OBX obx, String id, Reference patient, Practitioners practitioners, Reading in) {
        Optional<CodeableConcept> code =
                CeToCodeableConcept.map(obx.getObx3_ObservationIdentifier());
        if (code.isEmpty()) {
            in.at("OBX-3").note("the observation is left out: it does not say what was observed");
            return Optional.empty();
        }
        var observation = new Observation().setCode(code.get()).setSubject(patient);
        observation.setId(id);
        status(obx, observation, in);
        if (Pacemaker.is(code.get())) {
            Pacemaker.value(obx, observation, in);
        } else {
            ObxValue.set(obx, observation, in);
        }
        // spotless:off
        on(obx.getObx7_ReferencesRange(), f -> Optional.ofNullable(StToString.map(f)), f -> observation.addReferenceRange().setText(f));
        each(obx.getObx8_AbnormalFlags(), f -> Optional.ofNullable(StToString.map(f)), f -> interpretation(f, observation, in));
        on(obx.getObx14_DateTimeOfTheObservation(), f -> TsToDateTime.map(f, in.at("OBX-14")), observation::setEffective);
        practitioners.first(obx.getObx16_ResponsibleObserver(), "OBX-16").ifPresent(observation::addPerformer);
        method(obx.getObx17_ObservationMethod(), observation);
        // spotless:on
        return Optional.of(observation);
    }

    private static void status(OBX obx, Observation observation, Reading in) {
        String code = StToString.map(obx.getObx11_ObservationResultStatus());
        Optional<ObservationStatus> status =
                code == null ? Optional.empty() : Table0085.toFhir(code);
        if (code != null && status.isEmpty()) {
            in.at("OBX-11").note("taken as unknown: no FHIR status for this code of table 0085");
        }
        observation.setStatus(status.orElse(ObservationStatus.UNKNOWN));
        if ("N".equals(code)) {
            ObxValue.absent(observation, "not-asked");
        }
    }

    private static void interpretation(String code, Observation observation, Reading in) {
        Table0078.toFhir(code)
                .ifPresentOrElse(
                        c -> observation.addInterpretation(new CodeableConcept(c)),
                        () ->
                                in.at("OBX-8")
                                        .note(
                                                "left out: no FHIR interpretation for this code of table 0078"));
    }

    private static void method(CE[] methods, Observation observation) {
        if (methods.length > 0) {
            CeToCodeableConcept.map(methods[0]).ifPresent(observation::setMethod);
        }
    }
}
