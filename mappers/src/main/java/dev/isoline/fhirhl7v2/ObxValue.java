package dev.isoline.fhirhl7v2;

import ca.uhn.hl7v2.model.DataTypeException;
import ca.uhn.hl7v2.model.v251.datatype.CE;
import ca.uhn.hl7v2.model.v251.datatype.NM;
import ca.uhn.hl7v2.model.v251.datatype.ST;
import ca.uhn.hl7v2.model.v251.datatype.TS;
import ca.uhn.hl7v2.model.v251.datatype.TX;
import ca.uhn.hl7v2.model.v251.segment.OBX;
import org.hl7.fhir.r4.model.BooleanType;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.IntegerType;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.StringType;
import org.hl7.fhir.r4.model.Type;

/** value[x] to OBX-2, OBX-5 and OBX-6 (HL7 v2.5.1 ch. 7.4.2, table 0125). */
final class ObxValue {

    /** Longest ST in HL7 v2.5.1 ch. 2.A.70. */
    private static final int LONGEST_ST = 199;

    private ObxValue() {}

    /** False when v2 has no plain form of the value: waveforms, periods, ranges and ratios. */
    static boolean map(Type value, OBX obx) throws DataTypeException {
        if (value instanceof Quantity quantity && quantity.hasValue()) {
            number(quantity.getValue().toPlainString(), obx);
            unit(quantity, obx);
        } else if (value instanceof IntegerType integer) {
            number(integer.getValueAsString(), obx);
        } else if (value instanceof CodeableConcept concept) {
            var ce = new CE(obx.getMessage());
            DataTypes.ce(concept, ce);
            set("CE", ce, obx);
        } else if (value instanceof StringType string) {
            text(string.getValue(), obx);
        } else if (value instanceof BooleanType bool) {
            text(bool.booleanValue() ? "Y" : "N", obx);
        } else if (value instanceof DateTimeType time) {
            var ts = new TS(obx.getMessage());
            DateTimeToTs.map(time, ts);
            set("TS", ts, obx);
        } else {
            return false;
        }
        return true;
    }

    private static void number(String digits, OBX obx) throws DataTypeException {
        var nm = new NM(obx.getMessage());
        nm.setValue(digits);
        set("NM", nm, obx);
    }

    static void text(String text, OBX obx) throws DataTypeException {
        boolean isShort = text.length() <= LONGEST_ST && text.indexOf('\n') < 0;
        if (isShort) {
            var st = new ST(obx.getMessage());
            st.setValue(text);
            set("ST", st, obx);
        } else {
            var tx = new TX(obx.getMessage());
            tx.setValue(text);
            set("TX", tx, obx);
        }
    }

    static void set(String type, ca.uhn.hl7v2.model.Type value, OBX obx) throws DataTypeException {
        obx.getObx2_ValueType().setValue(type);
        obx.getObx5_ObservationValue(0).setData(value);
    }

    private static void unit(Quantity quantity, OBX obx) throws DataTypeException {
        obx.getObx6_Units().getCe1_Identifier().setValue(quantity.getCode());
        if (quantity.hasUnit() && !quantity.getUnit().equals(quantity.getCode())) {
            obx.getObx6_Units().getCe2_Text().setValue(quantity.getUnit());
        }
        obx.getObx6_Units()
                .getCe3_NameOfCodingSystem()
                .setValue(Tables.codingSystem(quantity.getSystem()));
    }
}
