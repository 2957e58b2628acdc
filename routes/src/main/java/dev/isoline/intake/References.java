package dev.isoline.intake;

import java.util.LinkedHashSet;
import java.util.Set;
import org.hl7.fhir.r4.model.Base;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;

/** The relative references of a resource, such as {@code Patient/…}. */
final class References {

    private References() {}

    /** Points every reference to one target at another. */
    static void redirect(Resource resource, String from, String to) {
        if (!from.equals(to)) {
            redirectIn(resource, from, to);
        }
    }

    private static void redirectIn(Base element, String from, String to) {
        if (element instanceof Reference reference && from.equals(reference.getReference())) {
            reference.setReference(to);
        }
        element.children().forEach(c -> c.getValues().forEach(v -> redirectIn(v, from, to)));
    }

    /** Targets of a resource's references, each once. */
    static Set<String> in(Resource resource) {
        var targets = new LinkedHashSet<String>();
        collect(resource, targets);
        return targets;
    }

    private static void collect(Base element, Set<String> targets) {
        if (element instanceof Reference reference && reference.hasReference()) {
            targets.add(reference.getReference());
        }
        element.children().forEach(c -> c.getValues().forEach(v -> collect(v, targets)));
    }

    /** {@code Type/id} of a resource. */
    static String to(Resource resource) {
        return resource.fhirType() + "/" + resource.getIdElement().getIdPart();
    }
}
