package dev.isoline.ledger;

import static java.util.stream.Collectors.joining;

import dev.isoline.ledger.FoundBy.Key;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * {@code resource} and {@code resource_history}: FHIR resources in every version, found by what
 * stands in {@code found_by}.
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
     *
     * @param beginning whether a value that only begins so is a match too
     */
    public record Criterion(String param, String system, List<String> values, boolean beginning) {

        /** The name of the condition on the resource's own id, of which there are no entries. */
        public static final String ID = "_id";

        public Criterion(String param, String system, List<String> values) {
            this(param, system, values, false);
        }
    }

    private record Current(long num, int version, List<Key> keys) {}

    private static final String SELECT =
            "SELECT r.type, r.id, r.version, r.updated, r.json FROM resource r WHERE ";

    private final Session session;

    ResourceTable(Session session) {
        this.session = session;
    }

    /** Adds the next version of a resource (the first is 1) and replaces its index entries. */
    public StoredResource put(
            String type, String id, String json, List<IndexEntry> index, Instant at) {
        return current(type, id)
                .map(before -> replace(before, type, id, json, index, at))
                .orElseGet(() -> add(type, id, json, index, at));
    }

    /** Adds the first version; fails when there is one. */
    public StoredResource add(
            String type, String id, String json, List<IndexEntry> index, Instant at) {
        var keys = Keys.of(type, index);
        long num =
                session.number(
                        "INSERT INTO resource (type, id, version, updated, entries, json)"
                                + " VALUES (?, ?, 1, ?, ?, ?) RETURNING num",
                        type,
                        id,
                        at,
                        Keys.write(keys),
                        json);
        new FoundBy(session).addAll(num, keys);
        return stored(type, id, 1, at, json);
    }

    private StoredResource replace(
            Current before,
            String type,
            String id,
            String json,
            List<IndexEntry> index,
            Instant at) {
        session.update(
                "INSERT INTO resource_history (resource, version, updated, json)"
                        + " SELECT num, version, updated, json FROM resource WHERE num = ?",
                before.num());
        var keys = Keys.of(type, index);
        session.update(
                "UPDATE resource SET version = ?, updated = ?, entries = ?, json = ?"
                        + " WHERE num = ?",
                before.version() + 1,
                at,
                Keys.write(keys),
                json,
                before.num());
        var foundBy = new FoundBy(session);
        foundBy.removeAll(before.num(), without(before.keys(), keys));
        foundBy.addAll(before.num(), without(keys, before.keys()));
        return stored(type, id, before.version() + 1, at, json);
    }

    /** Number of the newest version, 0 when there is none. */
    public int newest(String type, String id) {
        return current(type, id).map(Current::version).orElse(0);
    }

    /** The newest version. */
    public Optional<StoredResource> get(String type, String id) {
        return session.first(ResourceTable::stored, SELECT + "r.id = ? AND r.type = ?", id, type);
    }

    public Optional<StoredResource> version(String type, String id, int version) {
        return get(type, id)
                .filter(newest -> newest.version() == version)
                .or(() -> former(type, id, version));
    }

    /**
     * Ids of resources that carry this token or reference under the parameter; {@code system} null
     * matches any.
     */
    public List<String> find(String type, String param, String system, String value) {
        var meeting =
                new Condition().meets(type, List.of(new Criterion(param, system, List.of(value))));
        return session.list(
                row -> row.getString(1),
                "SELECT r.id FROM resource r WHERE " + meeting.sql + " ORDER BY 1",
                meeting.values.toArray());
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

    private Optional<Current> current(String type, String id) {
        return session.first(
                row -> new Current(row.getLong(1), row.getInt(2), Keys.read(row.getString(3))),
                "SELECT num, version, entries FROM resource WHERE id = ? AND type = ?",
                id,
                type);
    }

    private Optional<StoredResource> former(String type, String id, int version) {
        return session.first(
                ResourceTable::stored,
                "SELECT r.type, r.id, h.version, h.updated, h.json FROM resource r"
                        + " JOIN resource_history h ON h.resource = r.num"
                        + " WHERE r.id = ? AND r.type = ? AND h.version = ?",
                id,
                type,
                version);
    }

    private static List<Key> without(List<Key> keys, List<Key> others) {
        return keys.stream().filter(key -> !others.contains(key)).toList();
    }

    private static StoredResource stored(
            String type, String id, int version, Instant at, String json) {
        return new StoredResource(type, id, version, at.truncatedTo(ChronoUnit.MICROS), json);
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

        private static final String LAST_CHARACTER = Character.toString(Character.MAX_CODE_POINT);

        private final StringBuilder sql = new StringBuilder("r.type = ?");
        private final List<Object> values = new ArrayList<>();

        Condition meets(String type, List<Criterion> criteria) {
            values.add(type);
            for (Criterion criterion : criteria) {
                if (criterion.param().equals(Criterion.ID)) {
                    sql.append(" AND r.id IN ").append(alternatives(criterion));
                } else {
                    sql.append(" AND r.num IN (SELECT i.owner FROM found_by i WHERE ");
                    matches(type, criterion);
                    sql.append(')');
                }
            }
            return this;
        }

        private void matches(String type, Criterion criterion) {
            if (criterion.beginning()) {
                sql.append(begins(criterion));
            } else {
                sql.append("i.value IN ").append(alternatives(criterion));
            }
            sql.append(" AND i.param = ?");
            values.add(type + "." + criterion.param());
            if (criterion.system() != null) {
                sql.append(" AND i.system = ?");
                values.add(criterion.system());
            }
        }

        private String alternatives(Criterion criterion) {
            values.addAll(criterion.values());
            return criterion.values().stream().map(v -> "?").collect(joining(", ", "(", ")"));
        }

        private String begins(Criterion criterion) {
            for (String value : criterion.values()) {
                values.add(value);
                values.add(value + LAST_CHARACTER);
            }
            return criterion.values().stream()
                    .map(v -> "i.value BETWEEN ? AND ?")
                    .collect(joining(" OR ", "(", ")"));
        }
    }
}
