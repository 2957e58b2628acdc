package dev.isoline.intake;

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

    /** {@code Type/id} of a resource. */
    static String to(Resource resource) {
        return resource.fhirType() + "/" + resource.getIdElement().getIdPart();
    }
}
