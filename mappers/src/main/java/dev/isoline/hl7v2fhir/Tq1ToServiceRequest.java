package dev.isoline.hl7v2fhir;

import ca.uhn.hl7v2.model.v251.datatype.CWE;
import ca.uhn.hl7v2.model.v251.segment.TQ1;
import dev.isoline.hl7v2fhir.datatype.CqToDuration;
import dev.isoline.hl7v2fhir.datatype.Reading;
import dev.isoline.hl7v2fhir.datatype.StToString;
import dev.isoline.hl7v2fhir.datatype.TqToTiming;
import dev.isoline.hl7v2fhir.datatype.TsToDateTime;
import org.hl7.fhir.r4.model.ServiceRequest;

/**
 * TQ1 (HL7 v2.5.1 ch. 4.5.4) to ServiceRequest. Rows: TQ1[ServiceRequest]. Left out, and why:
 * docs/mappings/tq1-to-servicerequest.md.
 */
public final class Tq1ToServiceRequest {

    private Tq1ToServiceRequest() {}

    /** Fills only what an earlier TQ1 left empty; goes before ORC and OBR, which it outranks. */
    public static void map(TQ1 tq1, ServiceRequest request, Reading in) {
        if (!request.hasOccurrence()) {
            TqToTiming.timing(
                            CqToDuration.map(tq1.getTq16_ServiceDuration(), in.at("TQ1-6"))
                                    .orElse(null),
                            TsToDateTime.map(tq1.getTq17_StartDateTime(), in.at("TQ1-7"))
                                    .orElse(null),
                            TsToDateTime.map(tq1.getTq18_EndDateTime(), in.at("TQ1-8"))
                                    .orElse(null))
                    .ifPresent(request::setOccurrence);
        }
        for (CWE priority : tq1.getTq19_Priority()) {
            OrderTiming.priority(StToString.first(priority), "TQ1-9", request, in);
        }
        String text = StToString.map(tq1.getTq111_TextInstruction());
        if (text != null) {
            request.addNote().setText(text);
        }
    }
}
