package dev.isoline.ledger;

/** The contract on PostgreSQL. */
class PostgresLedgerTest extends LedgerContract {

    @Override
    Ledger open() throws Exception {
        return LedgerFactory.open(PostgresServer.newDatabase(), "postgres", "", null);
    }
}
