package dev.isoline.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.DriverManager;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The contract on the embedded store, and what is particular to it. */
class SqliteLedgerTest extends LedgerContract {

    @TempDir Path folder;

    @Override
    Ledger open() {
        return LedgerFactory.open("", "", "", folder);
    }

    @Test
    void a_second_gateway_in_the_same_folder_is_refused() {
        assertThatThrownBy(this::open)
                .isInstanceOf(LedgerException.class)
                .hasMessage("The data folder is in use by another gateway.");
    }

    @Test
    void the_file_is_for_its_owner_only_and_written_ahead() throws Exception {
        Path file = folder.resolve("isoline.db");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-------");
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                var rows = connection.createStatement().executeQuery("PRAGMA journal_mode")) {
            assertThat(rows.getString(1)).isEqualTo("wal");
        }
    }
}
