package dev.isoline.attach;

import dev.isoline.order.Requirement;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.hl7.fhir.r4.model.Duration;
import org.hl7.fhir.r4.model.Period;
import org.hl7.fhir.r4.model.Practitioner;
import org.hl7.fhir.r4.model.PractitionerRole;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.Timing.TimingRepeatComponent;

/** Required items that stand in ServiceRequest and what it refers to. */
final class OrderItems {

    private OrderItems() {}

    static Set<Requirement> of(ServiceRequest order, Function<String, Optional<Resource>> resolve) {
        var present = EnumSet.noneOf(Requirement.class);
        if (namesClinician(order.getRequester(), resolve)) {
            present.add(Requirement.ORDERING_CLINICIAN);
        }
        if (order.getCode().hasCoding() || order.getCode().hasText()) {
            present.add(Requirement.STUDY);
        }
        if (saysHowLong(order)) {
            present.add(Requirement.DURATION);
        }
        if (Pacemaker.answer(order, resolve).isPresent()) {
            present.add(Requirement.PACEMAKER);
        }
        return present;
    }

    private static boolean namesClinician(
            Reference reference, Function<String, Optional<Resource>> resolve) {
        Resource requester = resolve.apply(reference.getReference()).orElse(null);
        if (requester instanceof PractitionerRole role) {
            return namesClinician(role.getPractitioner(), resolve);
        }
        if (requester instanceof Practitioner clinician) {
            return clinician.hasName() || clinician.hasIdentifier();
        }
        return requester == null && (reference.hasDisplay() || reference.hasIdentifier());
    }

    private static boolean saysHowLong(ServiceRequest order) {
        if (order.hasOccurrencePeriod()) {
            return isClosed(order.getOccurrencePeriod());
        }
        if (!order.hasOccurrenceTiming()) {
            return false;
        }
        TimingRepeatComponent repeat = order.getOccurrenceTiming().getRepeat();
        return repeat.getBounds() instanceof Duration duration && isLong(duration)
                || repeat.getBounds() instanceof Period period && isClosed(period);
    }

    private static boolean isLong(Duration duration) {
        return duration.hasValue() && duration.getValue().signum() > 0;
    }

    private static boolean isClosed(Period period) {
        return period.hasStart() && period.hasEnd() && period.getStart().before(period.getEnd());
    }
}
