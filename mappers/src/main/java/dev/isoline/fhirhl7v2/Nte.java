package dev.isoline.fhirhl7v2;

import ca.uhn.hl7v2.model.DataTypeException;
import ca.uhn.hl7v2.model.v251.group.ORU_R01_OBSERVATION;
import ca.uhn.hl7v2.model.v251.group.ORU_R01_ORDER_OBSERVATION;
import ca.uhn.hl7v2.model.v251.segment.NTE;

/** NTE (HL7 v2.5.1 ch. 2.15.10) of the filler: table 0105, L. */
final class Nte {

    private Nte() {}

    static void add(ORU_R01_OBSERVATION observation, String text) throws DataTypeException {
        fill(observation.getNTE(observation.getNTEReps()), observation.getNTEReps(), text);
    }

    static void add(ORU_R01_ORDER_OBSERVATION order, String text) throws DataTypeException {
        fill(order.getNTE(order.getNTEReps()), order.getNTEReps(), text);
    }

    private static void fill(NTE nte, int number, String text) throws DataTypeException {
        nte.getNte1_SetIDNTE().setValue(String.valueOf(number));
        nte.getNte2_SourceOfComment().setValue("L");
        nte.getNte3_Comment(0).setValue(text);
    }
}
