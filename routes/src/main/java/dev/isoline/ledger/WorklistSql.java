package dev.isoline.ledger;

import dev.isoline.ledger.WorklistSearch.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The statement of one page: rows are found by one index and come in its order, whatever else
 * narrows them. The other conditions stand as expressions no index has, so that neither store is
 * tempted to find rows by them and sort a million of them.
 */
final class WorklistSql {

    private final Path path;
    private final List<String> conditions = new ArrayList<>();
    private final List<Object> values = new ArrayList<>();

    WorklistSql(WorklistSearch search, WorklistTable.Found after) {
        path = search.path();
        search.accession().ifPresent(a -> add(column(Path.ACCESSION) + " = ?", a));
        search.patientId().ifPresent(p -> add(column(Path.PATIENT) + " = ?", p));
        name(search.name(), after);
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
        return switch (path) {
            case NAME -> row.getBytes(2);
            case START -> row.getLong(2);
            default -> row.getString(2);
        };
    }

    /** A page that goes on after a row needs no lower bound: two would hide the nearer one. */
    private void name(byte[] beginning, WorklistTable.Found after) {
        if (beginning.length == 0) {
            return;
        }
        if (path != Path.NAME || after == null) {
            add(column(Path.NAME) + " >= ?", beginning);
        }
        add(column(Path.NAME) + " < ?", next(beginning));
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

    /** The first bytes that are beyond all that begin so; UTF-8 has no byte FFH. */
    private static byte[] next(byte[] beginning) {
        byte[] next = Arrays.copyOf(beginning, beginning.length);
        next[next.length - 1]++;
        return next;
    }
}
