package dev.isoline.attach;

import dev.isoline.fhir.BusinessIdentifier;
import dev.isoline.order.Requirement;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.hl7.fhir.r4.model.Address;
import org.hl7.fhir.r4.model.Coverage;
import org.hl7.fhir.r4.model.HumanName;
import org.hl7.fhir.r4.model.Organization;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.RelatedPerson;
import org.hl7.fhir.r4.model.Resource;

/** Required items that stand in Coverage and what it refers to. */
final class CoverageItems {

    private final Coverage coverage;
    private final Patient patient;
    private final Function<String, Optional<Resource>> resolve;

    private CoverageItems(
            Coverage coverage, Patient patient, Function<String, Optional<Resource>> resolve) {
        this.coverage = coverage;
        this.patient = patient;
        this.resolve = resolve;
    }

    static Set<Requirement> of(
            Coverage coverage, Patient patient, Function<String, Optional<Resource>> resolve) {
        var items = new CoverageItems(coverage, patient, resolve);
        var present = EnumSet.noneOf(Requirement.class);
        if (coverage.getPayor().stream().anyMatch(items::isNamed)) {
            present.add(Requirement.INSURER_NAME);
        }
        if (coverage.getClass_().stream().anyMatch(CoverageItems::isGroup)) {
            present.add(Requirement.GROUP_NUMBER);
        }
        if (items.hasPolicyNumber()) {
            present.add(Requirement.POLICY_NUMBER);
        }
        if (coverage.hasRelationship()) {
            present.add(Requirement.SUBSCRIBER_RELATIONSHIP);
        }
        present.addAll(items.subscriber());
        return present;
    }

    private boolean isNamed(Reference payor) {
        return payor.hasDisplay()
                || resolve.apply(payor.getReference())
                        .filter(r -> r instanceof Organization o && o.hasName())
                        .isPresent()
                || isPatient(payor) && patient.hasName();
    }

    private static boolean isGroup(Coverage.ClassComponent it) {
        return it.hasValue()
                && it.getType().getCoding().stream().anyMatch(c -> "group".equals(c.getCode()));
    }

    private boolean hasPolicyNumber() {
        return coverage.hasSubscriberId()
                || coverage.getIdentifier().stream()
                        .anyMatch(i -> BusinessIdentifier.hasType(i, "MB") && i.hasValue());
    }

    private Set<Requirement> subscriber() {
        if (isSelf() || isPatient(coverage.getSubscriber())) {
            return named(patient.getName(), patient.getAddress());
        }
        Resource subscriber = resolve.apply(coverage.getSubscriber().getReference()).orElse(null);
        return subscriber instanceof RelatedPerson person
                ? named(person.getName(), person.getAddress())
                : Set.of();
    }

    private static Set<Requirement> named(List<HumanName> names, List<Address> addresses) {
        var present = EnumSet.noneOf(Requirement.class);
        if (names.stream().anyMatch(n -> n.hasFamily() || n.hasText())) {
            present.add(Requirement.SUBSCRIBER_NAME);
        }
        if (addresses.stream().anyMatch(a -> a.hasLine() || a.hasCity() || a.hasText())) {
            present.add(Requirement.SUBSCRIBER_ADDRESS);
        }
        return present;
    }

    /** The patient is the subscriber; nobody else has to be named. */
    private boolean isSelf() {
        return !coverage.hasSubscriber()
                && coverage.getRelationship().getCoding().stream()
                        .anyMatch(c -> "self".equals(c.getCode()));
    }

    private boolean isPatient(Reference reference) {
        return reference.hasReference()
                && reference.getReference().equals("Patient/" + patient.getIdElement().getIdPart());
    }
}
