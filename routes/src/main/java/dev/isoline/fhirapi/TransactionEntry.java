package dev.isoline.fhirapi;

import org.hl7.fhir.r4.model.Bundle.BundleEntryComponent;
import org.hl7.fhir.r4.model.Bundle.BundleEntryRequestComponent;
import org.hl7.fhir.r4.model.Bundle.HTTPVerb;
import org.hl7.fhir.r4.model.Resource;

/** Bundle.entry of a transaction to what is to be written. */
final class TransactionEntry {

    private TransactionEntry() {}

    /**
     * @param index of the entry, for the path of what is wrong with it
     */
    static WriteEntry read(BundleEntryComponent entry, int index) {
        String path = "Bundle.entry[" + index + "]";
        BundleEntryRequestComponent request = entry.getRequest();
        Resource resource = entry.getResource();
        if (resource == null) {
            throw TransactionProvider.refused(
                    path + ".resource", "A POST or PUT needs its resource.");
        }
        boolean update = request.getMethod() == HTTPVerb.PUT;
        supported(request, resource, path);
        return new WriteEntry(
                update,
                update ? id(request.getUrl()) : "",
                update ? query(request.getUrl()) : Queries.of(request.getIfNoneExist()),
                update ? version(request.getIfMatch()) : "",
                resource,
                WriteEntry.orEmpty(entry.getFullUrl()),
                path + ".resource");
    }

    private static void supported(
            BundleEntryRequestComponent request, Resource resource, String path) {
        boolean declared =
                switch (request.getMethod()) {
                    case POST, PUT -> Interactions.write(resource);
                    default -> false;
                };
        if (!declared) {
            throw TransactionProvider.refused(
                    path + ".request.method",
                    "This method is not supported for this type of resource.");
        }
        String url = request.getUrl();
        String type = resource.fhirType();
        boolean fits =
                request.getMethod() == HTTPVerb.POST
                        ? url.equals(type)
                        : url.startsWith(type + "?") || url.startsWith(type + "/");
        if (!fits) {
            throw TransactionProvider.refused(
                    path + ".request.url", "The address does not fit the method and the resource.");
        }
    }

    private static String id(String url) {
        return url.contains("?") ? "" : url.substring(url.indexOf('/') + 1);
    }

    private static String query(String url) {
        return url.contains("?") ? Queries.of(url) : "";
    }

    /** {@code W/"3"} to {@code 3}. */
    private static String version(String etag) {
        return etag == null ? "" : etag.replaceAll("^W/|\"", "");
    }
}
