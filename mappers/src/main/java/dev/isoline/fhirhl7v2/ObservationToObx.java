package dev.isoline.fhirhl7v2;

import ca.uhn.hl7v2.model.DataTypeException;
import ca.uhn.hl7v2.model.v251.group.ORU_R01_OBSERVATION;
import ca.uhn.hl7v2.model.v251.group.ORU_R01_ORDER_OBSERVATION;
import ca.uhn.hl7v2.model.v251.segment.OBX;
import org.hl7.fhir.r4.model.Annotation;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Type;

/**
 * Observation (FHIR R4) to OBX (HL7 v2.5.1 ch. 7.4.2): one for its value and one for each
 * component, tied by OBX-4. Rows: docs/mappings/report-to-oru.md.
 */
final class ObservationToObx {

    private final ORU_R01_ORDER_OBSERVATION order;
    private int written;
    private int observation;

    ObservationToObx(ORU_R01_ORDER_OBSERVATION order) {
        this.order = order;
    }

    void map(Observation from) throws DataTypeException {
        observation++;
        int before = written;
        one(from, from.getCode(), from.getValue(), from.getDataAbsentReason());
        for (var component : from.getComponent()) {
            one(from, component.getCode(), component.getValue(), component.getDataAbsentReason());
        }
        if (written > before) {
            notes(from, order.getOBSERVATION(written - 1));
        }
    }

    private void one(Observation from, CodeableConcept code, Type value, CodeableConcept absent)
            throws DataTypeException {
        if (HourlySeries.is(value)) {
            hours(from, code, HourlySeries.of(value));
        }
        if (value == null && absent.isEmpty()) {
            return;
        }
        OBX obx = order.getOBSERVATION(written).getOBX();
        if (value != null && !ObxValue.map(value, obx)) {
            return;
        }
        fill(from, code, obx);
        if (value == null) {
            withoutValue(absent, order.getOBSERVATION(written - 1));
        }
    }

    /** An hour has a sub-id of its own, the same in each series of the observation. */
    private void hours(Observation from, CodeableConcept code, HourlySeries series)
            throws DataTypeException {
        for (int hour = 0; hour < series.hours(); hour++) {
            if (series.has(hour)) {
                OBX obx = order.getOBSERVATION(written).getOBX();
                series.value(hour, obx);
                fill(from, code, obx);
                obx.getObx4_ObservationSubID().setValue(observation + "." + (hour + 1));
                series.time(hour, from, obx);
            }
        }
    }

    private void fill(Observation from, CodeableConcept code, OBX obx) throws DataTypeException {
        written++;
        obx.getObx1_SetIDOBX().setValue(String.valueOf(written));
        DataTypes.ce(code, obx.getObx3_ObservationIdentifier());
        obx.getObx4_ObservationSubID().setValue(String.valueOf(observation));
        obx.getObx11_ObservationResultStatus().setValue(Tables.observation(from.getStatus()));
        if (from.hasEffectivePeriod()) {
            DateTimeToTs.map(
                    from.getEffectivePeriod().getStartElement(),
                    obx.getObx14_DateTimeOfTheObservation());
        } else if (from.hasEffectiveDateTimeType()) {
            DateTimeToTs.map(
                    from.getEffectiveDateTimeType(), obx.getObx14_DateTimeOfTheObservation());
        }
        if (from.hasMethod()) {
            DataTypes.ce(from.getMethod(), obx.getObx17_ObservationMethod(0));
        }
    }

    /** Table 0085 X: no result can be obtained for this observation. */
    private static void withoutValue(CodeableConcept absent, ORU_R01_OBSERVATION to)
            throws DataTypeException {
        to.getOBX().getObx11_ObservationResultStatus().setValue("X");
        var coding = absent.getCodingFirstRep();
        String reason = coding.hasDisplay() ? coding.getDisplay() : coding.getCode();
        Nte.add(to, "No value: " + (absent.hasText() ? absent.getText() : reason));
    }

    private static void notes(Observation from, ORU_R01_OBSERVATION to) throws DataTypeException {
        for (Annotation note : from.getNote()) {
            Nte.add(to, note.getText());
        }
    }

    /** The report itself as a document, OBX-5 as ED. */
    void document(OBX obx, CodeableConcept code, String status) throws DataTypeException {
        written++;
        obx.getObx1_SetIDOBX().setValue(String.valueOf(written));
        DataTypes.ce(code, obx.getObx3_ObservationIdentifier());
        obx.getObx11_ObservationResultStatus().setValue(status);
    }

    OBX next() {
        return order.getOBSERVATION(written).getOBX();
    }
}
