package dev.isoline.fhir;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.hl7.fhir.r4.model.Base;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleEntryComponent;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;

/** The way back from a {@link TransactionBundle}: its resources as they are kept here. */
public final class BundleResources {

    private static final String UUID = "urn:uuid:";

    private BundleResources() {}

    /** Copies of the entries' resources, with ids from their full URLs and relative references. */
    public static List<Resource> of(Bundle bundle) {
        Map<String, String> references = new HashMap<>();
        bundle.getEntry().forEach(entry -> references.put(entry.getFullUrl(), reference(entry)));
        var resources = new ArrayList<Resource>();
        for (BundleEntryComponent entry : bundle.getEntry()) {
            Resource resource = entry.getResource().copy();
            resource.setId(reference(entry));
            relate(resource, references);
            resources.add(resource);
        }
        return resources;
    }

    private static String reference(BundleEntryComponent entry) {
        return entry.getResource().fhirType() + "/" + entry.getFullUrl().substring(UUID.length());
    }

    private static void relate(Base element, Map<String, String> references) {
        if (element instanceof Reference reference
                && references.containsKey(reference.getReference())) {
            reference.setReference(references.get(reference.getReference()));
        }
        element.children().forEach(c -> c.getValues().forEach(v -> relate(v, references)));
    }
}
