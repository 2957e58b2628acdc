package dev.isoline.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One connection with its prepared statements. It is in auto-commit mode; transactions are begun
 * and ended by SQL, which both stores understand and which takes no lock before it is needed.
 */
final class Session implements AutoCloseable {

    /** Reads the current row. */
    interface Row<T> {
        T read(ResultSet row) throws SQLException;
    }

    private static final int CACHED_STATEMENTS = 200;

    private final Connection connection;
    private final Map<String, PreparedStatement> statements =
            new LinkedHashMap<>(64, 0.75f, true) {
                @Override
                protected boolean removeEldestEntry(Map.Entry<String, PreparedStatement> eldest) {
                    if (size() <= CACHED_STATEMENTS) {
                        return false;
                    }
                    closeQuietly(eldest.getValue());
                    return true;
                }
            };

    Session(Connection connection) {
        this.connection = connection;
    }

    void execute(String sql) {
        try {
            prepared(sql).execute();
        } catch (SQLException e) {
            throw new StoreException(e);
        }
    }

    /** Number of rows changed. */
    int update(String sql, Object... values) {
        try {
            return bound(sql, values).executeUpdate();
        } catch (SQLException e) {
            throw new StoreException(e);
        }
    }

    void updateAll(String sql, List<Object[]> rows) {
        try {
            PreparedStatement statement = prepared(sql);
            for (Object[] row : rows) {
                bind(statement, row);
                statement.addBatch();
            }
            statement.executeBatch();
        } catch (SQLException e) {
            throw new StoreException(e);
        }
    }

    <T> List<T> list(Row<T> row, String sql, Object... values) {
        try (ResultSet rows = bound(sql, values).executeQuery()) {
            var list = new ArrayList<T>();
            while (rows.next()) {
                list.add(row.read(rows));
            }
            return list;
        } catch (SQLException e) {
            throw new StoreException(e);
        }
    }

    <T> Optional<T> first(Row<T> row, String sql, Object... values) {
        return list(row, sql, values).stream().findFirst();
    }

    /** The number a query, or an insert with {@code RETURNING}, gives. */
    long number(String sql, Object... values) {
        return list(row -> row.getLong(1), sql, values).get(0);
    }

    static long micros(Instant at) {
        return ChronoUnit.MICROS.between(Instant.EPOCH, at);
    }

    /** Null for a null column. */
    static Instant instant(ResultSet row, int column) throws SQLException {
        long micros = row.getLong(column);
        return row.wasNull() ? null : Instant.EPOCH.plus(micros, ChronoUnit.MICROS);
    }

    @Override
    public void close() {
        statements.values().forEach(Session::closeQuietly);
        closeQuietly(connection);
    }

    private PreparedStatement bound(String sql, Object... values) throws SQLException {
        PreparedStatement statement = prepared(sql);
        bind(statement, values);
        return statement;
    }

    private PreparedStatement prepared(String sql) throws SQLException {
        PreparedStatement statement = statements.get(sql);
        if (statement == null) {
            statement = connection.prepareStatement(sql);
            statements.put(sql, statement);
        }
        return statement;
    }

    private static void bind(PreparedStatement statement, Object... values) throws SQLException {
        for (int i = 0; i < values.length; i++) {
            bind(statement, i + 1, values[i]);
        }
    }

    private static void bind(PreparedStatement statement, int at, Object value)
            throws SQLException {
        if (value == null) {
            statement.setNull(at, Types.NULL);
        } else if (value instanceof byte[] bytes) {
            statement.setBytes(at, bytes);
        } else if (value instanceof Instant instant) {
            statement.setLong(at, micros(instant));
        } else if (value instanceof Number number) {
            statement.setLong(at, number.longValue());
        } else {
            statement.setString(at, value.toString());
        }
    }

    private static void closeQuietly(AutoCloseable closeable) {
        try {
            closeable.close();
        } catch (Exception e) {
            // The connection is given up; the store takes back what was not committed.
        }
    }
}
