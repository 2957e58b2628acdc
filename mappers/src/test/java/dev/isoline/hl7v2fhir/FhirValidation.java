package dev.isoline.hl7v2fhir;

import ca.uhn.fhir.context.FhirContext;
import dev.isoline.fhir.ReferenceValidator;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleType;
import org.hl7.fhir.r4.model.DomainResource;

/** Everything a message was mapped to, for the reference validator. */
final class FhirValidation {

    static final FhirContext R4 = FhirContext.forR4Cached();

    private FhirValidation() {}

    /** Errors of a bundle of everything mapped; empty when it is valid. */
    static List<String> errors(MappedMessage mapped) {
        return ReferenceValidator.errors(bundle(mapped));
    }

    static Bundle bundle(MappedMessage mapped) {
        var bundle = new Bundle().setType(BundleType.COLLECTION);
        for (DomainResource resource : resources(mapped)) {
            bundle.addEntry()
                    .setFullUrl(
                            "https://isoline.example/fhir/"
                                    + resource.fhirType()
                                    + "/"
                                    + resource.getIdElement().getIdPart())
                    .setResource(resource);
        }
        return bundle;
    }

    /** Everything mapped, each resource once, in a fixed order. */
    static List<DomainResource> resources(MappedMessage mapped) {
        Map<String, DomainResource> all = new LinkedHashMap<>();
        List<DomainResource> list = new ArrayList<>();
        list.add(mapped.patient().patient());
        list.addAll(mapped.patient().coverages());
        list.addAll(mapped.patient().related());
        for (ClinicalOrder order : mapped.orders()) {
            list.add(order.serviceRequest());
            list.addAll(order.related());
        }
        list.forEach(r -> all.putIfAbsent(r.fhirType() + "/" + r.getIdElement().getIdPart(), r));
        return List.copyOf(all.values());
    }
}
