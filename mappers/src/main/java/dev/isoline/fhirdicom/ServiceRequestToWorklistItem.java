package dev.isoline.fhirdicom;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Tag;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;

/**
 * ServiceRequest, Patient and what they refer to (FHIR R4) to a modality worklist item, PS3.4 table
 * K.6-1. Rows with their sources, and what is left out: docs/mappings/
 * service-request-to-worklist-item.md.
 *
 * <p>Every return key of type 1 has a value but Scheduled Station AE Title, which stays empty for a
 * step that any station may do: whoever answers a query fills in the station that asked.
 */
public final class ServiceRequestToWorklistItem {

    private ServiceRequestToWorklistItem() {}

    /**
     * @param resolve finds the resource of a relative reference
     * @param zone of the order's sender: the item's dates and times stand in it
     * @param received start of an order that says neither when to start nor when it was written
     * @throws dev.isoline.order.ContentError when the order lacks a return key of type 1, or has a
     *     name or number that DICOM cannot carry
     */
    public static DataSet map(
            ServiceRequest order,
            Patient patient,
            Function<String, Optional<Resource>> resolve,
            Station station,
            ZoneId zone,
            Instant received) {
        var ordered = OrderedProcedure.of(order, patient, resolve);
        var times = StepTimes.of(order, zone, received);
        var step = ScheduledProcedureStepModule.of(ordered, station, times);
        return new DataSet()
                .putItems(Tag.ScheduledProcedureStepSequence, List.of(step))
                .putAll(RequestedProcedureModule.of(ordered))
                .putAll(ImagingServiceRequestModule.of(ordered, zone))
                .putAll(VisitModule.of(ordered))
                .putAll(WorklistPatientModule.of(ordered))
                .putAll(offset(times));
    }

    private static DataSet offset(StepTimes times) {
        try {
            return new DataSet().putText(Tag.TimezoneOffsetFromUTC, times.offset());
        } catch (DicomException e) {
            throw new IllegalStateException(e);
        }
    }
}
