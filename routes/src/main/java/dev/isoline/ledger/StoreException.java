package dev.isoline.ledger;

import java.sql.SQLException;
import java.util.Set;

/**
 * A statement failed. The text names the kind of failure only: the driver's own text may quote the
 * row, and the row holds patient data.
 */
final class StoreException extends LedgerException {

    private static final long serialVersionUID = 1;

    /** Unique violation, serialization failure, deadlock (PostgreSQL, appendix A). */
    private static final Set<String> CONFLICTS = Set.of("23505", "40001", "40P01");

    private final String state;

    StoreException(SQLException failure) {
        super(
                "The store refused a statement (SQLSTATE %s, code %d)."
                        .formatted(failure.getSQLState(), failure.getErrorCode()));
        state = String.valueOf(failure.getSQLState());
        setStackTrace(failure.getStackTrace());
    }

    /** Another node was at the same rows: run again, the work sees what that node wrote. */
    boolean isConflict() {
        return CONFLICTS.contains(state);
    }
}
