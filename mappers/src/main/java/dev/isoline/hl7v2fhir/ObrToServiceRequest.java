package dev.isoline.hl7v2fhir;

import static dev.isoline.hl7v2fhir.Fields.each;
import static dev.isoline.hl7v2fhir.Fields.on;

import ca.uhn.hl7v2.model.v251.datatype.TS;
import ca.uhn.hl7v2.model.v251.segment.OBR;
import dev.isoline.hl7v2fhir.datatype.CeToCodeableConcept;
import dev.isoline.hl7v2fhir.datatype.EiToIdentifier;
import dev.isoline.hl7v2fhir.datatype.Reading;
import dev.isoline.hl7v2fhir.datatype.StToString;
import dev.isoline.hl7v2fhir.datatype.TsToDateTime;
import dev.isoline.hl7v2fhir.table.Table0203;
import java.util.Optional;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestIntent;
import org.hl7.fhir.r4.model.Timing;

/**
 * OBR (HL7 v2.5.1 ch. 4.5.3) to ServiceRequest. Rows: OBR[ServiceRequest]. Left out, and why:
 * docs/mappings/obr-to-servicerequest.md.
 */
public final class ObrToServiceRequest {

    private ObrToServiceRequest() {}

    /** Adds to what TQ1 and ORC already filled; ORC-2, -3, -7 and -12 outrank their twins here. */
    public static void map(
            OBR obr, ServiceRequest request, Practitioners practitioners, Reading in) {
        // spotless:off
        on(obr.getObr2_PlacerOrderNumber(), f -> EiToIdentifier.map(f, "PLAC", in.at("OBR-2")), f -> identifier(f, "PLAC", request, in));
        on(obr.getObr3_FillerOrderNumber(), f -> EiToIdentifier.map(f, "FILL", in.at("OBR-3")), f -> identifier(f, "FILL", request, in));
        on(obr.getObr4_UniversalServiceIdentifier(), CeToCodeableConcept::map, request::setCode);
        OrderTiming.map(obr.getObr27_QuantityTiming(), "OBR-27", request, in);
        OrderTiming.priority(StToString.map(obr.getObr5_PriorityOBR()), "OBR-5", request, in);
        requested(obr.getObr6_RequestedDateTime(), request, in);
        request.setIntent(intent(StToString.map(obr.getObr11_SpecimenActionCode())));
        if (!request.hasRequester()) {
            practitioners.first(obr.getObr16_OrderingProvider(), "OBR-16").ifPresent(request::setRequester);
        }
        each(obr.getObr31_ReasonForStudy(), CeToCodeableConcept::map, request::addReasonCode);
        each(obr.getObr46_PlacerSupplementalServiceInformation(), CeToCodeableConcept::map, request::addOrderDetail);
        each(obr.getObr47_FillerSupplementalServiceInformation(), CeToCodeableConcept::map, request::addOrderDetail);
        // spotless:on
    }

    private static void identifier(
            Identifier number, String type, ServiceRequest request, Reading in) {
        Optional<Identifier> fromOrc =
                request.getIdentifier().stream()
                        .filter(i -> i.getType().hasCoding(Table0203.SYSTEM, type))
                        .findFirst();
        if (fromOrc.isEmpty()) {
            request.addIdentifier(number);
        } else if (!fromOrc.get().getValue().equals(number.getValue())) {
            in.note("not used: it differs from the number in ORC");
        }
    }

    /** With a duration the requested time is the start of the monitoring. */
    private static void requested(TS field, ServiceRequest request, Reading in) {
        Optional<DateTimeType> time = TsToDateTime.map(field, in.at("OBR-6"));
        if (time.isEmpty()) {
            return;
        }
        if (!request.hasOccurrence()) {
            request.setOccurrence(time.get());
        } else if (request.hasOccurrenceTiming()) {
            Timing timing = request.getOccurrenceTiming();
            if (!timing.hasEvent() && !timing.getRepeat().hasBoundsPeriod()) {
                timing.getEvent().add(time.get());
            }
        }
    }

    private static ServiceRequestIntent intent(String action) {
        if ("A".equals(action)) {
            return ServiceRequestIntent.FILLERORDER;
        }
        return "G".equals(action) ? ServiceRequestIntent.REFLEXORDER : ServiceRequestIntent.ORDER;
    }
}
