package dev.isoline.ledger;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * {@code resource} and {@code resource_index}: FHIR resources in every version, and what finds
 * them.
 */
public interface ResourceTable {

    /**
     * @param json the resource with its id and meta as stored
     */
    record StoredResource(String type, String id, int version, Instant updated, String json) {}

    /**
     * One value a search parameter finds the resource by. A token has {@code system} and {@code
     * value}; a reference has the type in {@code system} and the id in {@code value}; a string or
     * date has only {@code value}.
     */
    record IndexEntry(String param, String system, String value) {}

    /** One search condition; {@code system} null matches any; {@code values} are alternatives. */
    record Criterion(String param, String system, List<String> values) {}

    /** Adds the next version of a resource (the first is 1) and replaces its index entries. */
    StoredResource put(String type, String id, String json, List<IndexEntry> index, Instant at);

    /** The newest version. */
    Optional<StoredResource> get(String type, String id);

    Optional<StoredResource> version(String type, String id, int version);

    /** Ids of resources that carry this token or reference under the parameter. */
    List<String> find(String type, String param, String system, String value);

    /** Newest versions that meet all criteria, newest first. */
    List<StoredResource> search(String type, List<Criterion> criteria, int offset, int count);

    int count(String type, List<Criterion> criteria);
}
