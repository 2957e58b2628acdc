package dev.isoline.resources;

import dev.isoline.ledger.ResourceTable.Criterion;
import dev.isoline.ledger.ResourceTable.StoredResource;
import dev.isoline.ledger.Tables;
import java.time.Instant;
import java.util.Date;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Resource;

/** FHIR resources in the ledger: encoded, versioned and indexed. */
public final class ResourceStore {

    private ResourceStore() {}

    /**
     * Stores the next version of a resource.
     *
     * @param resource has its id; left unchanged
     * @return the resource as stored, with {@code meta.versionId} and {@code meta.lastUpdated}
     */
    public static Resource put(Tables tables, Resource resource, Instant at) {
        String type = resource.fhirType();
        String id = resource.getIdElement().getIdPart();
        int version = tables.resources().newest(type, id) + 1;
        Resource stored = resource.copy();
        stored.setId(type + "/" + id);
        stored.getMeta().setVersionId(Integer.toString(version)).setLastUpdated(Date.from(at));
        tables.resources().put(type, id, FhirJson.encode(stored), SearchIndex.entries(stored), at);
        return stored;
    }

    /** The newest version. */
    public static <R extends Resource> Optional<R> get(Tables tables, Class<R> type, String id) {
        return tables.resources().get(type.getSimpleName(), id).map(r -> decoded(type, r));
    }

    public static <R extends Resource> Optional<R> version(
            Tables tables, Class<R> type, String id, int version) {
        return tables.resources()
                .version(type.getSimpleName(), id, version)
                .map(r -> decoded(type, r));
    }

    /** Newest versions that meet all criteria, newest first. */
    public static <R extends Resource> List<R> search(
            Tables tables, Class<R> type, List<Criterion> criteria, int offset, int count) {
        return tables.resources().search(type.getSimpleName(), criteria, offset, count).stream()
                .map(r -> decoded(type, r))
                .toList();
    }

    public static boolean exists(Tables tables, String type, String id) {
        return tables.resources().get(type, id).isPresent();
    }

    private static <R extends Resource> R decoded(Class<R> type, StoredResource stored) {
        return type.cast(FhirJson.decode(stored.json()));
    }
}
