package dev.isoline.ledger;

import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.function.Function;

/** The ledger on SQLite or PostgreSQL; opened by {@link LedgerFactory}. */
public final class JdbcLedger implements Ledger {

    /** Waiting units beyond which the ledger refuses work. */
    static final int QUEUE = 2048;

    private final Store store;
    private final BlockingQueue<Unit<?>> queue = new ArrayBlockingQueue<>(QUEUE);
    private final GroupCommit writer;

    JdbcLedger(Store store) {
        this.store = store;
        this.writer = new GroupCommit(store, queue);
        writer.start();
    }

    /** Fails with {@link LedgerBusyException} when too much work waits. */
    @Override
    public <T> CompletableFuture<T> write(Function<Tables, T> work) {
        var unit = new Unit<>(work);
        if (!writer.isOpen()) {
            return closed();
        }
        if (!queue.offer(unit)) {
            return CompletableFuture.failedFuture(new LedgerBusyException(QUEUE));
        }
        // The writer may have emptied the queue for the last time just before the offer.
        return writer.hasEnded() && queue.remove(unit) ? closed() : unit.future;
    }

    @Override
    public <T> T read(Function<Tables, T> query) {
        try (Session session = store.reader()) {
            return query.apply(new Tables(session));
        }
    }

    /** Commits what waits, then lets go of the store. */
    @Override
    public void close() {
        writer.close();
        store.close();
    }

    private static <T> CompletableFuture<T> closed() {
        return CompletableFuture.failedFuture(new LedgerException("The ledger is closed."));
    }
}
