package dev.isoline.ledger;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.util.Map;
import org.postgresql.ds.PGSimpleDataSource;

/** The shared store: a PostgreSQL database that several nodes use. */
final class PostgresStore {

    private static final int READERS = 4;

    // spotless:off
    private static final Map<String, String> WORDS = Map.of(
            "identity",  "BIGINT GENERATED ALWAYS AS IDENTITY PRIMARY KEY",
            "number",    "BIGINT",
            "bytes",     "BYTEA",
            "exact",     "COLLATE \"C\"",
            "clustered", "");
    // spotless:on

    private PostgresStore() {}

    static Store open(String url, String user, String password) {
        PGSimpleDataSource source = source(url, user, password);
        LedgerFactory.migrate(source, WORDS);
        return new Store(source, readers(source), "BEGIN", () -> {});
    }

    private static PGSimpleDataSource source(String url, String user, String password) {
        var source = new PGSimpleDataSource();
        source.setUrl(url);
        source.setUser(user);
        source.setPassword(password);
        source.setApplicationName("isoline");
        source.setTcpKeepAlive(true);
        // Whatever the server's default: what is acknowledged is on its disk.
        source.setOptions("-c synchronous_commit=on");
        return source;
    }

    private static HikariDataSource readers(PGSimpleDataSource source) {
        var config = new HikariConfig();
        config.setPoolName("ledger-readers");
        config.setDataSource(source);
        config.setMaximumPoolSize(READERS);
        config.setConnectionInitSql("SET SESSION CHARACTERISTICS AS TRANSACTION READ ONLY");
        return new HikariDataSource(config);
    }
}
