package dev.isoline.resources;

import dev.isoline.ledger.OrderTable.OrderRow;
import java.util.Optional;
import java.util.function.Function;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.Task;

/**
 * One order and what it speaks of.
 *
 * @param row its ledger row
 * @param task where it stands
 * @param resolve finds the stored resource of a relative reference
 */
public record OrderResources(
        OrderRow row,
        ServiceRequest serviceRequest,
        Patient patient,
        Task task,
        Function<String, Optional<Resource>> resolve) {}
