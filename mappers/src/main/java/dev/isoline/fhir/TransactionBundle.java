package dev.isoline.fhir;

import dev.isoline.order.StableId;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import org.hl7.fhir.r4.model.Base;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.HTTPVerb;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Meta;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;

/**
 * A transaction (FHIR R4 http.html#transaction) that can be sent twice and makes nothing twice:
 * every entry is found by a business identifier at the receiver. Resources come with an id of their
 * own and relative references; they leave without the id, under {@code urn:uuid:} full URLs, and a
 * reference to what is not in the bundle becomes a logical one.
 */
public final class TransactionBundle {

    private final Map<String, String> fullUrls = new LinkedHashMap<>();
    private final Map<String, Bundle.BundleEntryComponent> entries = new LinkedHashMap<>();

    /** The receiver's copy is replaced by ours: conditional update. */
    public TransactionBundle update(Resource resource) {
        return add(resource, HTTPVerb.PUT);
    }

    /** The receiver's copy, if it has one, stays as it is: conditional create. */
    public TransactionBundle create(Resource resource) {
        return add(resource, HTTPVerb.POST);
    }

    /** The bundle; entries in the order they were added. */
    public Bundle build() {
        var bundle = new Bundle().setType(Bundle.BundleType.TRANSACTION);
        entries.values().forEach(bundle::addEntry);
        bundle.getEntry().forEach(entry -> rewrite(entry.getResource()));
        return bundle;
    }

    private TransactionBundle add(Resource original, HTTPVerb verb) {
        String reference = original.fhirType() + "/" + original.getIdElement().getIdPart();
        var resource = original.copy();
        resource.setId((String) null);
        resource.setMeta(portable(original.getMeta()));
        String query = BusinessIdentifier.query(resource, fullUrl(reference));
        String key = resource.fhirType() + "?" + query;
        if (!entries.containsKey(key)) {
            entries.put(key, entry(resource, verb, query, fullUrl(reference)));
        }
        fullUrls.put(reference, entries.get(key).getFullUrl());
        return this;
    }

    private static Bundle.BundleEntryComponent entry(
            Resource resource, HTTPVerb verb, String query, String fullUrl) {
        var entry = new Bundle.BundleEntryComponent().setFullUrl(fullUrl).setResource(resource);
        var request = entry.getRequest().setMethod(verb);
        if (verb == HTTPVerb.PUT) {
            request.setUrl(resource.fhirType() + "?" + query);
        } else {
            request.setUrl(resource.fhirType()).setIfNoneExist(query);
        }
        return entry;
    }

    /** Version and time of our store mean nothing to the receiver. */
    private static Meta portable(Meta meta) {
        var portable = meta.copy();
        portable.setVersionId(null).setLastUpdated(null).setSource(null);
        return portable;
    }

    private void rewrite(Base element) {
        if (element instanceof Reference reference && reference.hasReference()) {
            rewrite(reference);
        }
        element.children().forEach(child -> child.getValues().forEach(this::rewrite));
    }

    private void rewrite(Reference reference) {
        String target = reference.getReference();
        if (fullUrls.containsKey(target)) {
            reference.setReference(fullUrls.get(target));
        } else if (!target.startsWith("#")) {
            logical(reference, target);
        }
    }

    private static void logical(Reference reference, String target) {
        reference.setReference(null);
        String[] parts = target.split("/");
        if (parts.length == 2) {
            reference.setType(parts[0]);
        }
        if (!reference.hasIdentifier()) {
            reference.setIdentifier(
                    new Identifier().setSystem(Systems.URI).setValue(fullUrl(target)));
        }
    }

    private static String fullUrl(String reference) {
        String id = reference.substring(reference.lastIndexOf('/') + 1);
        return "urn:uuid:" + (isUuid(id) ? id : StableId.of("fullUrl", reference));
    }

    private static boolean isUuid(String id) {
        try {
            return UUID.fromString(id).toString().equals(id);
        } catch (IllegalArgumentException e) {
            return false;
        }
    }
}
