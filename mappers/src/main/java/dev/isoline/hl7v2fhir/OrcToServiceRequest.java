package dev.isoline.hl7v2fhir;

import static dev.isoline.hl7v2fhir.Fields.on;

import ca.uhn.hl7v2.model.v251.segment.ORC;
import dev.isoline.hl7v2fhir.datatype.CeToCodeableConcept;
import dev.isoline.hl7v2fhir.datatype.CweToCodeableConcept;
import dev.isoline.hl7v2fhir.datatype.EiToIdentifier;
import dev.isoline.hl7v2fhir.datatype.Reading;
import dev.isoline.hl7v2fhir.datatype.StToString;
import dev.isoline.hl7v2fhir.datatype.TsToDateTime;
import dev.isoline.hl7v2fhir.table.Table0038;
import dev.isoline.hl7v2fhir.table.Table0119;
import java.util.Optional;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestIntent;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;

/**
 * ORC (HL7 v2.5.1 ch. 4.5.1) to ServiceRequest. Rows: ORC[ServiceRequest]. Left out, and why:
 * docs/mappings/orc-to-servicerequest.md.
 */
public final class OrcToServiceRequest {

    private OrcToServiceRequest() {}

    /** Fills what ORC says; OBR comes after and fills what ORC left empty. */
    public static void map(
            ORC orc, ServiceRequest request, Practitioners practitioners, Reading in) {
        request.setIntent(ServiceRequestIntent.ORDER).setStatus(status(orc, in));
        // spotless:off
        on(orc.getOrc2_PlacerOrderNumber(), f -> EiToIdentifier.map(f, "PLAC", in.at("ORC-2")), request::addIdentifier);
        on(orc.getOrc3_FillerOrderNumber(), f -> EiToIdentifier.map(f, "FILL", in.at("ORC-3")), request::addIdentifier);
        on(orc.getOrc4_PlacerGroupNumber(), f -> EiToIdentifier.map(f, null, in.at("ORC-4")), request::setRequisition);
        OrderTiming.map(orc.getOrc7_QuantityTiming(), "ORC-7", request, in);
        on(orc.getOrc9_DateTimeOfTransaction(), f -> TsToDateTime.map(f, in.at("ORC-9")), f -> authored(orc, f, request));
        practitioners.first(orc.getOrc12_OrderingProvider(), "ORC-12").ifPresent(request::setRequester);
        on(orc.getOrc29_OrderType(), CweToCodeableConcept::map, request::addLocationCode);
        // spotless:on
    }

    /**
     * ORC-5 wins over ORC-1; a control code that says nothing about the status leaves it active.
     */
    private static ServiceRequestStatus status(ORC orc, Reading in) {
        String order = StToString.map(orc.getOrc5_OrderStatus());
        Optional<ServiceRequestStatus> status =
                order == null ? Optional.empty() : Table0038.toFhir(order);
        if (order != null && status.isEmpty()) {
            in.at("ORC-5").note("not used: no FHIR status for this code of table 0038");
        }
        String control = StToString.map(orc.getOrc1_OrderControl());
        return status.or(() -> Optional.ofNullable(control).flatMap(Table0119::toFhir))
                .orElse(ServiceRequestStatus.ACTIVE);
    }

    private static void authored(
            ORC orc, org.hl7.fhir.r4.model.DateTimeType time, ServiceRequest request) {
        if ("NW".equals(StToString.map(orc.getOrc1_OrderControl()))) {
            request.setAuthoredOnElement(time);
        }
    }

    /**
     * ORC-16: why a new order is placed, where neither DG1 nor OBR-31 say it (our own); else why it
     * changes.
     */
    static void reason(ORC orc, ServiceRequest request) {
        Optional<CodeableConcept> reason =
                CeToCodeableConcept.map(orc.getOrc16_OrderControlCodeReason());
        if (reason.isEmpty()) {
            return;
        }
        if ("NW".equals(StToString.map(orc.getOrc1_OrderControl()))) {
            if (!request.hasReasonCode() && !request.hasReasonReference()) {
                request.addReasonCode(reason.get());
            }
        } else if (StToString.map(orc.getOrc5_OrderStatus()) == null) {
            request.addExtension(
                    "http://hl7.org/fhir/StructureDefinition/request-statusReason", reason.get());
        }
    }
}
