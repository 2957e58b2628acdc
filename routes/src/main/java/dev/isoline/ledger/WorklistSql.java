package dev.isoline.ledger;

import dev.isoline.ledger.WorklistSearch.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/**
 * The statement of one page: rows are found by one index and come in its order, whatever else
 * narrows them. The other conditions stand as expressions no index has, so that neither store is
 * tempted to find rows by them and sort a million of them.
 */
final class WorklistSql {

    /** The last of all characters: comes after whatever may follow a beginning. */
    private static final String BEYOND = Character.toString(Character.MAX_CODE_POINT);

    private final Path path;
    private final List<String> conditions = new ArrayList<>();
    private final List<Object> values = new ArrayList<>();

    WorklistSql(WorklistSearch search, WorklistTable.Found after) {
        path = search.path();
        search.accession().ifPresent(a -> add(column(Path.ACCESSION) + " = ?", a));
        search.patientId().ifPresent(p -> add(column(Path.PATIENT) + " = ?", p));
        name(search.name(), after);
        within(search);
        start(search, after);
        search.station().ifPresent(s -> add("station IN (?, '')", s));
        if (after != null) {
            add("(" + path.column + ", id) > (?, ?)", after.place(), after.id());
        }
    }

    String text() {
        String where = conditions.isEmpty() ? "" : " WHERE " + String.join(" AND ", conditions);
        return "SELECT id, %1$s, item FROM worklist%2$s ORDER BY %1$s, id"
                .formatted(path.column, where);
    }

    Object[] values() {
        return values.toArray();
    }

    /** The value of the path's column, to go on after. */
    Object place(ResultSet row) throws SQLException {
        return path == Path.START ? (Object) row.getLong(2) : row.getString(2);
    }

    /** A page that goes on after a row needs no lower bound: two would hide the nearer one. */
    private void name(String beginning, WorklistTable.Found after) {
        if (beginning.isEmpty()) {
            return;
        }
        if (path != Path.NAME || after == null) {
            add(column(Path.NAME) + " >= ?", beginning);
        }
        add(column(Path.NAME) + " < ?", beginning + BEYOND);
    }

    /** A beginning that holds it says so already. */
    private void within(WorklistSearch search) {
        if (!search.within().isEmpty() && !search.name().contains(search.within())) {
            String literal = search.within().replaceAll("[!%_]", "!$0");
            add(column(Path.NAME) + " LIKE ? ESCAPE '!'", "%" + literal + "%");
        }
    }

    private void start(WorklistSearch search, WorklistTable.Found after) {
        if (search.from() > 0 && (path != Path.START || after == null)) {
            add(column(Path.START) + " >= ?", search.from());
        }
        if (search.to() < Long.MAX_VALUE) {
            add(column(Path.START) + " <= ?", search.to());
        }
    }

    private String column(Path of) {
        return of == path ? of.column : "COALESCE(%1$s, %1$s)".formatted(of.column);
    }

    private void add(String condition, Object... of) {
        conditions.add(condition);
        values.addAll(List.of(of));
    }
}
