package dev.isoline.ledger;

import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;

/** The worklist on the embedded store. */
class SqliteWorklistTest extends WorklistContract {

    @TempDir Path folder;

    @Override
    Ledger open() {
        return LedgerFactory.open("", "", "", folder);
    }
}
