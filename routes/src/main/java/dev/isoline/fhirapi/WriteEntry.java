package dev.isoline.fhirapi;

import org.hl7.fhir.r4.model.Resource;

/**
 * One create or update: a request of its own or an entry of a transaction (FHIR R4, 3.1.0.11).
 *
 * @param update PUT, else POST
 * @param id of the resource to update; empty for create and conditional update
 * @param condition query of a conditional create or update; empty when unconditional
 * @param ifMatch version the update is meant for; empty: any
 * @param resource as it came
 * @param fullUrl what other entries of the transaction call it; empty outside a transaction
 * @param path FHIRPath of the resource within the request
 */
record WriteEntry(
        boolean update,
        String id,
        String condition,
        String ifMatch,
        Resource resource,
        String fullUrl,
        String path) {

    static WriteEntry create(Resource resource, String condition) {
        return new WriteEntry(false, "", orEmpty(condition), "", resource, "", resource.fhirType());
    }

    static WriteEntry update(Resource resource, String id, String condition, String ifMatch) {
        return new WriteEntry(
                true,
                orEmpty(id),
                orEmpty(condition),
                orEmpty(ifMatch),
                resource,
                "",
                resource.fhirType());
    }

    String type() {
        return resource.fhirType();
    }

    static String orEmpty(String text) {
        return text == null ? "" : text;
    }
}
