package dev.isoline.ledger;

/** The worklist on PostgreSQL. */
class PostgresWorklistTest extends WorklistContract {

    @Override
    Ledger open() throws Exception {
        return LedgerFactory.open(PostgresServer.newDatabase(), "postgres", "", null);
    }
}
