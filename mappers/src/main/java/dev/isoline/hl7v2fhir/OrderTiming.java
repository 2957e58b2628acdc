package dev.isoline.hl7v2fhir;

import ca.uhn.hl7v2.model.v251.datatype.TQ;
import dev.isoline.hl7v2fhir.datatype.Reading;
import dev.isoline.hl7v2fhir.datatype.StToString;
import dev.isoline.hl7v2fhir.datatype.TqToTiming;
import dev.isoline.hl7v2fhir.table.Table0485;
import org.hl7.fhir.r4.model.ServiceRequest;

/**
 * ORC-7 and OBR-27 (HL7 v2.5.1 ch. 4.3.4) to when, how long and how urgent. Rows:
 * TQ[ServiceRequest].
 */
final class OrderTiming {

    private OrderTiming() {}

    /** Fills only what an earlier field left empty. */
    static void map(TQ[] field, String name, ServiceRequest request, Reading in) {
        if (field.length == 0) {
            return;
        }
        TQ tq = field[0];
        if (!request.hasOccurrence()) {
            TqToTiming.map(tq, in.at(name)).ifPresent(request::setOccurrence);
        }
        priority(StToString.map(tq.getTq6_Priority()), name + ".6", request, in);
        String text = StToString.map(tq.getTq8_Text());
        if (text != null) {
            request.addNote().setText(text);
        }
    }

    /** The first field that gives a priority wins. */
    static void priority(String code, String name, ServiceRequest request, Reading in) {
        if (code == null || request.hasPriority()) {
            return;
        }
        Table0485.ofWord(code)
                .ifPresentOrElse(
                        request::setPriority,
                        () ->
                                in.at(name)
                                        .note(
                                                "left out: no FHIR priority for this code of table 0485"));
    }
}
