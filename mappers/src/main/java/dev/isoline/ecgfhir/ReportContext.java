package dev.isoline.ecgfhir;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;

/**
 * What a report is about besides the numbers.
 *
 * @param orderId id of {@code order}
 * @param order the order it answers, with its placer, filler and accession numbers
 * @param patient subject of the order
 * @param requester who ordered: Practitioner, PractitionerRole, Organization; may be empty
 * @param zone in which the recording's local times are
 * @param issued when the report was made
 * @param software version of the program that computed it
 */
public record ReportContext(
        String orderId,
        ServiceRequest order,
        Patient patient,
        List<Resource> requester,
        RecordingFile recording,
        ZoneId zone,
        Instant issued,
        String software) {}
