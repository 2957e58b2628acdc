package dev.isoline.ledger;

import java.nio.file.Path;
import java.util.Map;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;

/** Opens the ledger and brings its schema up to date. */
public final class LedgerFactory {

    private LedgerFactory() {}

    /**
     * @param url JDBC URL of a PostgreSQL database; empty: SQLite in the data folder
     * @param user of the database; not used by SQLite
     * @param password of the database; not used by SQLite
     * @param dataDir made when it is not there; one process at a time may have an embedded ledger
     *     in it
     */
    public static Ledger open(String url, String user, String password, Path dataDir) {
        return new JdbcLedger(store(url, user, password, dataDir));
    }

    static Store store(String url, String user, String password, Path dataDir) {
        return url.isEmpty() ? SqliteStore.open(dataDir) : PostgresStore.open(url, user, password);
    }

    /** One text of the schema for both stores; the words in which they differ are filled in. */
    static void migrate(DataSource source, Map<String, String> words) {
        Flyway.configure()
                .dataSource(source)
                .locations("classpath:db/migration")
                .placeholders(words)
                .load()
                .migrate();
    }
}
