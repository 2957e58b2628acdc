package dev.isoline.hl7v2fhir;

import ca.uhn.hl7v2.model.Primitive;
import ca.uhn.hl7v2.model.Type;
import ca.uhn.hl7v2.model.Varies;
import ca.uhn.hl7v2.model.v251.datatype.CE;
import ca.uhn.hl7v2.model.v251.datatype.CNE;
import ca.uhn.hl7v2.model.v251.datatype.CWE;
import ca.uhn.hl7v2.model.v251.datatype.DR;
import ca.uhn.hl7v2.model.v251.datatype.DT;
import ca.uhn.hl7v2.model.v251.datatype.DTM;
import ca.uhn.hl7v2.model.v251.datatype.IS;
import ca.uhn.hl7v2.model.v251.datatype.NM;
import ca.uhn.hl7v2.model.v251.datatype.SN;
import ca.uhn.hl7v2.model.v251.datatype.TS;
import ca.uhn.hl7v2.model.v251.segment.OBX;
import dev.isoline.hl7v2fhir.datatype.CeToCodeableConcept;
import dev.isoline.hl7v2fhir.datatype.CneToCodeableConcept;
import dev.isoline.hl7v2fhir.datatype.CweToCodeableConcept;
import dev.isoline.hl7v2fhir.datatype.DrToPeriod;
import dev.isoline.hl7v2fhir.datatype.Reading;
import dev.isoline.hl7v2fhir.datatype.SnToValue;
import dev.isoline.hl7v2fhir.datatype.StToString;
import dev.isoline.hl7v2fhir.datatype.TsToDateTime;
import dev.isoline.hl7v2fhir.table.Table0396;
import java.math.BigDecimal;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.StringType;

/**
 * OBX-5 with the type of OBX-2 and the unit of OBX-6 (HL7 v2.5.1 ch. 7.4.2.5) to
 * Observation.value[x].
 */
final class ObxValue {

    private ObxValue() {}

    static void set(OBX obx, Observation observation, Reading in) {
        Varies[] values = obx.getObx5_ObservationValue();
        if (values.length == 0) {
            return;
        }
        if (values.length > 1) {
            in.at("OBX-5").note("only the first of several values is carried");
        }
        Type value = values[0].getData();
        org.hl7.fhir.r4.model.Type mapped = map(value, obx, in.at("OBX-5"));
        if (mapped != null) {
            observation.setValue(mapped);
        } else if (StToString.first(value) != null) {
            in.note("left out: a value of this type (OBX-2) is not carried with an order");
        }
    }

    private static org.hl7.fhir.r4.model.Type map(Type value, OBX obx, Reading in) {
        if (value instanceof NM nm) {
            return number(StToString.map(nm), obx);
        } else if (value instanceof SN sn) {
            return SnToValue.map(sn, unit(obx.getObx6_Units()));
        } else if (value instanceof DT || value instanceof DTM || value instanceof TS) {
            return TsToDateTime.map(value, in).orElse(null);
        } else if (value instanceof DR dr) {
            return DrToPeriod.map(dr, in);
        } else if (value instanceof Primitive text && !(value instanceof IS)) {
            String string = StToString.map(text);
            return string == null ? null : new StringType(string);
        }
        return concept(value);
    }

    private static CodeableConcept concept(Type value) {
        if (value instanceof CE ce) {
            return CeToCodeableConcept.map(ce).orElse(null);
        } else if (value instanceof CWE cwe) {
            return CweToCodeableConcept.map(cwe).orElse(null);
        } else if (value instanceof CNE cne) {
            return CneToCodeableConcept.map(cne).orElse(null);
        } else if (value instanceof IS is && StToString.map(is) != null) {
            return new CodeableConcept(new Coding().setCode(StToString.map(is)));
        }
        return null;
    }

    /** A number that is none stays as the text it is. */
    private static org.hl7.fhir.r4.model.Type number(String text, OBX obx) {
        BigDecimal number = SnToValue.number(text);
        if (number != null) {
            return unit(obx.getObx6_Units()).setValue(number);
        }
        return text == null ? null : new StringType(text);
    }

    /** CWE[Quantity]: code and system only when both are valued. */
    private static Quantity unit(CE units) {
        var quantity = new Quantity();
        String code = StToString.map(units.getCe1_Identifier());
        String text = StToString.map(units.getCe2_Text());
        String system = StToString.map(units.getCe3_NameOfCodingSystem());
        quantity.setUnit(text == null ? code : text);
        if (code != null && system != null) {
            quantity.setCode(code).setSystem(Table0396.toFhir(system));
        }
        return quantity;
    }

    static void absent(Observation observation, String reason) {
        observation
                .getDataAbsentReason()
                .addCoding()
                .setSystem("http://terminology.hl7.org/CodeSystem/data-absent-reason")
                .setCode(reason);
    }
}
