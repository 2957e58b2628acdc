package dev.isoline.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * {@code resource} and {@code resource_index}: FHIR resources in every version, and what finds
 * them.
 */
public final class ResourceTable {

    /**
     * @param json the resource with its id and meta as stored
     */
    public record StoredResource(
            String type, String id, int version, Instant updated, String json) {}

    /**
     * One value a search parameter finds the resource by. A token has {@code system} and {@code
     * value}; a reference has the type in {@code system} and the id in {@code value}; a string or
     * date has only {@code value}.
     */
    public record IndexEntry(String param, String system, String value) {}

    /**
     * One search condition; {@code system} null matches any, empty matches entries without one;
     * {@code values} are alternatives.
     */
    public record Criterion(String param, String system, List<String> values) {}

    private static final String SELECT =
            "SELECT r.type, r.id, r.version, r.updated, r.json FROM resource r WHERE ";

    private final Session session;

    ResourceTable(Session session) {
        this.session = session;
    }

    /** Adds the next version of a resource (the first is 1) and replaces its index entries. */
    public StoredResource put(
            String type, String id, String json, List<IndexEntry> index, Instant at) {
        int version = retire(type, id) + 1;
        session.update(
                "INSERT INTO resource (type, id, version, latest, updated, json)"
                        + " VALUES (?, ?, ?, 1, ?, ?)",
                type,
                id,
                version,
                at,
                json);
        session.updateAll(
                "INSERT INTO resource_index (type, id, param, system, value)"
                        + " VALUES (?, ?, ?, ?, ?)",
                index.stream().distinct().map(entry -> row(type, id, entry)).toList());
        return new StoredResource(type, id, version, at.truncatedTo(ChronoUnit.MICROS), json);
    }

    /** Number of the newest version, 0 when there is none. */
    public int newest(String type, String id) {
        return (int)
                session.number(
                        "SELECT COALESCE(MAX(version), 0) FROM resource WHERE type = ? AND id = ?",
                        type,
                        id);
    }

    /** The newest version. */
    public Optional<StoredResource> get(String type, String id) {
        return session.first(
                ResourceTable::stored,
                SELECT + "r.type = ? AND r.id = ? ORDER BY r.version DESC LIMIT 1",
                type,
                id);
    }

    public Optional<StoredResource> version(String type, String id, int version) {
        return session.first(
                ResourceTable::stored,
                SELECT + "r.type = ? AND r.id = ? AND r.version = ?",
                type,
                id,
                version);
    }

    /**
     * Ids of resources that carry this token or reference under the parameter; {@code system} null
     * matches any.
     */
    public List<String> find(String type, String param, String system, String value) {
        var matching = new Condition().matches(type, new Criterion(param, system, List.of(value)));
        return session.list(
                row -> row.getString(1),
                "SELECT DISTINCT i.id FROM resource_index i WHERE " + matching.sql + " ORDER BY 1",
                matching.values.toArray());
    }

    /** Newest versions that meet all criteria, newest first. */
    public List<StoredResource> search(
            String type, List<Criterion> criteria, int offset, int count) {
        var meeting = new Condition().meets(type, criteria);
        meeting.values.add(count);
        meeting.values.add(offset);
        return session.list(
                ResourceTable::stored,
                SELECT + meeting.sql + " ORDER BY r.updated DESC, r.id DESC LIMIT ? OFFSET ?",
                meeting.values.toArray());
    }

    public int count(String type, List<Criterion> criteria) {
        var meeting = new Condition().meets(type, criteria);
        return (int)
                session.number(
                        "SELECT COUNT(*) FROM resource r WHERE " + meeting.sql,
                        meeting.values.toArray());
    }

    /** Takes the newest version out of the searches; its number, or 0 when there is none. */
    private int retire(String type, String id) {
        int version = newest(type, id);
        if (version > 0) {
            session.update(
                    "UPDATE resource SET latest = 0 WHERE type = ? AND id = ? AND version = ?",
                    type,
                    id,
                    version);
            session.update("DELETE FROM resource_index WHERE type = ? AND id = ?", type, id);
        }
        return version;
    }

    private static Object[] row(String type, String id, IndexEntry entry) {
        String system = Objects.requireNonNullElse(entry.system(), "");
        return new Object[] {type, id, entry.param(), system, entry.value()};
    }

    private static StoredResource stored(ResultSet row) throws SQLException {
        return new StoredResource(
                row.getString(1),
                row.getString(2),
                row.getInt(3),
                Session.instant(row, 4),
                row.getString(5));
    }

    /** A WHERE clause in the making. */
    private static final class Condition {

        private final StringBuilder sql = new StringBuilder();
        private final List<Object> values = new ArrayList<>();

        Condition meets(String type, List<Criterion> criteria) {
            sql.append("r.latest = 1 AND r.type = ?");
            values.add(type);
            for (Criterion criterion : criteria) {
                sql.append(" AND r.id IN (SELECT i.id FROM resource_index i WHERE ");
                matches(type, criterion);
                sql.append(')');
            }
            return this;
        }

        Condition matches(String type, Criterion criterion) {
            String alternatives = "?, ".repeat(criterion.values().size());
            sql.append("i.type = ? AND i.param = ? AND i.value IN (")
                    .append(alternatives, 0, Math.max(0, alternatives.length() - 2))
                    .append(')');
            values.add(type);
            values.add(criterion.param());
            values.addAll(criterion.values());
            if (criterion.system() != null) {
                sql.append(" AND i.system = ?");
                values.add(criterion.system());
            }
            return this;
        }
    }
}
