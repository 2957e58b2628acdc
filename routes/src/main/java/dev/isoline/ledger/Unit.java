package dev.isoline.ledger;

import java.util.concurrent.CompletableFuture;
import java.util.function.Function;

/** One unit of work and the future its caller waits for. */
final class Unit<T> {

    private static final int RUNS = 4;

    final CompletableFuture<T> future = new CompletableFuture<>();
    private final Function<Tables, T> work;
    private T value;
    private Throwable failure;
    private int runs;

    Unit(Function<Tables, T> work) {
        this.work = work;
    }

    /**
     * Runs the work within a savepoint.
     *
     * @return false when it met another node at the same rows and is worth another run
     * @throws StoreException when the transaction itself is lost
     */
    boolean run(Session session, Tables tables) {
        session.execute("SAVEPOINT unit");
        runs++;
        try {
            value = work.apply(tables);
            failure = null;
        } catch (Throwable e) {
            failure = e;
            session.execute("ROLLBACK TO SAVEPOINT unit");
        }
        session.execute("RELEASE SAVEPOINT unit");
        return runs == RUNS || !(failure instanceof StoreException e && e.isConflict());
    }

    void fail(Throwable reason) {
        failure = reason;
    }

    /** Tells the caller; to be called only after the commit that holds the work. */
    void complete() {
        if (failure == null) {
            future.complete(value);
        } else {
            future.completeExceptionally(failure);
        }
    }
}
