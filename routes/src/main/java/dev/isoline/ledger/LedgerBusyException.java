package dev.isoline.ledger;

/** More work waits than the ledger takes on; nothing was written, and it may be sent again. */
public final class LedgerBusyException extends LedgerException {

    private static final long serialVersionUID = 1;

    LedgerBusyException(int waiting) {
        super("The ledger is busy: " + waiting + " units of work wait to be committed.");
    }
}
