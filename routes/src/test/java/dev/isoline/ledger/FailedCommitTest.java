package dev.isoline.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import dev.isoline.ledger.AuditTable.Event;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/**
 * A COMMIT that the store refuses: a deferred foreign key, which SQLite checks only then
 * (sqlite.org/foreignkeys.html, section 4.2).
 */
class FailedCommitTest {

    private static final List<String> CHECKED_AT_COMMIT =
            List.of(
                    "CREATE TABLE kept (entity TEXT PRIMARY KEY)",
                    "CREATE TABLE promised (entity TEXT REFERENCES kept DEFERRABLE INITIALLY DEFERRED)",
                    "CREATE TRIGGER promise AFTER INSERT ON audit WHEN NEW.entity = 'bad'"
                            + " BEGIN INSERT INTO promised VALUES (NEW.entity); END");

    @TempDir private Path folder;
    private final AtomicInteger runs = new AtomicInteger();
    private Ledger ledger;

    @BeforeEach
    void open() throws SQLException {
        LedgerFactory.open("", "", "", folder).close();
        String url = "jdbc:sqlite:" + folder.resolve(SqliteStore.FILE);
        try (var connection = DriverManager.getConnection(url);
                var statement = connection.createStatement()) {
            for (String sql : CHECKED_AT_COMMIT) {
                statement.execute(sql);
            }
        }
        var config = new SQLiteConfig();
        config.enforceForeignKeys(true);
        var source = new SQLiteDataSource(config);
        source.setUrl(url);
        var readers = new HikariConfig();
        readers.setDataSource(source);
        ledger =
                new JdbcLedger(
                        new Store(
                                source,
                                new HikariDataSource(readers),
                                "BEGIN IMMEDIATE",
                                () -> {}));
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    @Test
    void each_unit_of_the_group_is_run_again_and_committed_by_itself() {
        var gathered = new CountDownLatch(1);
        var before = ledger.write(tables -> await(gathered));
        var first = add("first");
        var bad = add("bad");
        var last = add("last");
        gathered.countDown();
        before.join();
        first.join();
        last.join();

        assertThatThrownBy(bad::join).hasCauseInstanceOf(StoreException.class);
        assertThat(runs).as("three in the group, three alone").hasValue(6);
        assertThat(count("first")).isEqualTo(1);
        assertThat(count("bad")).isZero();
        assertThat(count("last")).isEqualTo(1);
    }

    private CompletableFuture<Integer> add(String entity) {
        return ledger.write(
                tables -> {
                    tables.audit().add(new Event(Instant.EPOCH, "a", "read", entity, "ok"));
                    return runs.incrementAndGet();
                });
    }

    private int count(String entity) {
        return ledger.read(tables -> tables.audit().of(entity).size());
    }

    private static boolean await(CountDownLatch latch) {
        try {
            latch.await();
            return true;
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
