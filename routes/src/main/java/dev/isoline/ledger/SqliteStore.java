package dev.isoline.ledger;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Map;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConnection;
import org.sqlite.SQLiteDataSource;

/** The embedded store: one SQLite file, written ahead and synced at every commit. */
final class SqliteStore {

    static final String FILE = "isoline.db";
    private static final int READERS = 4;
    private static final int BUSY_MILLIS = 10_000;
    private static final int CACHE_KIBIBYTES = 64 * 1024;

    /** 16 MB of log. At the default of 1000 pages every group would copy it into the database. */
    private static final String CHECKPOINT = "PRAGMA wal_autocheckpoint = 4096";

    // spotless:off
    private static final Map<String, String> WORDS = Map.of(
            "identity",  "INTEGER PRIMARY KEY",
            "number",    "INTEGER",
            "bytes",     "BLOB",
            "exact",     "", // as it is by default
            "clustered", "WITHOUT ROWID");
    // spotless:on

    private SqliteStore() {}

    static Store open(Path dataDir) {
        FolderLock lock = FolderLock.take(dataDir);
        try {
            return open(dataDir, lock);
        } catch (RuntimeException | IOException e) {
            lock.close();
            throw new LedgerException("The ledger in the data folder cannot be opened.", e);
        }
    }

    private static Store open(Path dataDir, FolderLock lock) throws IOException {
        Path file = dataDir.resolve(FILE);
        OwnerOnly.createFile(file);
        SQLiteDataSource source = source(file);
        LedgerFactory.migrate(source, WORDS);
        try (var session = new Store(source, null, "", null).writer()) {
            // Whoever claimed deliveries is gone: the folder is ours alone.
            new Tables(session).deliveries().releaseClaims();
        }
        return new Store(source, readers(source), "BEGIN IMMEDIATE", lock);
    }

    private static SQLiteDataSource source(Path file) {
        var config = new SQLiteConfig();
        config.setJournalMode(SQLiteConfig.JournalMode.WAL);
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
        config.setBusyTimeout(BUSY_MILLIS);
        // A group that outgrows the cache is written to disk in pieces, and again at its commit.
        config.setCacheSize(-CACHE_KIBIBYTES);
        // What a savepoint might need again would otherwise be a file made anew for each group.
        config.setTempStore(SQLiteConfig.TempStore.MEMORY);
        // Ids come by RETURNING; the driver would otherwise ask for one after each statement.
        config.setGetGeneratedKeys(false);
        var source =
                new SQLiteDataSource(config) {
                    @Override
                    public SQLiteConnection getConnection(String user, String password)
                            throws SQLException {
                        var connection = super.getConnection(user, password);
                        try (var statement = connection.createStatement()) {
                            statement.execute(CHECKPOINT);
                        }
                        return connection;
                    }
                };
        source.setUrl("jdbc:sqlite:" + file);
        return source;
    }

    private static HikariDataSource readers(SQLiteDataSource source) {
        var config = new HikariConfig();
        config.setPoolName("ledger-readers");
        config.setDataSource(source);
        config.setMaximumPoolSize(READERS);
        config.setConnectionInitSql("PRAGMA query_only = TRUE");
        return new HikariDataSource(config);
    }
}
