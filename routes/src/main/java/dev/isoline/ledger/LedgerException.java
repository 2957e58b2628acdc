package dev.isoline.ledger;

/** The ledger could not do what it was asked, for a reason that lies in the store. */
public class LedgerException extends RuntimeException {

    private static final long serialVersionUID = 1;

    public LedgerException(String message) {
        super(message);
    }

    public LedgerException(String message, Throwable cause) {
        super(message, cause);
    }
}
