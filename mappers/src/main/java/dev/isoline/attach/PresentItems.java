package dev.isoline.attach;

import dev.isoline.order.Requirement;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.hl7.fhir.r4.model.Coverage;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;

/** Which of the required items an order brings with all that is attached to it. */
public final class PresentItems {

    private PresentItems() {}

    /**
     * @param coverages all known of the patient; only the first in {@code Coverage.order} that is
     *     active counts, because items of two insurers do not make one insurance
     * @param resolve finds the resource of a relative reference such as {@code Organization/…}
     */
    public static Set<Requirement> of(
            ServiceRequest order,
            Patient patient,
            List<Coverage> coverages,
            Function<String, Optional<Resource>> resolve) {
        Function<String, Optional<Resource>> find =
                reference -> Optional.ofNullable(reference).flatMap(resolve);
        var present = EnumSet.noneOf(Requirement.class);
        present.addAll(PatientItems.of(patient));
        CoverageSnapshot.primary(coverages)
                .map(coverage -> CoverageItems.of(coverage, patient, find))
                .ifPresent(present::addAll);
        present.addAll(OrderItems.of(order, find));
        return present;
    }
}
