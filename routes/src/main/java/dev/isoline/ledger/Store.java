package dev.isoline.ledger;

import com.zaxxer.hikari.HikariDataSource;
import java.sql.SQLException;
import javax.sql.DataSource;

/**
 * A database, opened and migrated.
 *
 * @param source connections that may write
 * @param readers pool of connections that may not
 * @param begin starts a transaction that will write
 * @param hold what else is to be let go at the end
 */
record Store(DataSource source, HikariDataSource readers, String begin, AutoCloseable hold)
        implements AutoCloseable {

    Session writer() {
        return session(source);
    }

    Session reader() {
        return session(readers);
    }

    @Override
    public void close() {
        try (hold) {
            readers.close();
        } catch (Exception e) {
            throw new LedgerException("The store could not be closed.", e);
        }
    }

    private static Session session(DataSource source) {
        try {
            return new Session(source.getConnection());
        } catch (SQLException e) {
            throw new StoreException(e);
        }
    }
}
