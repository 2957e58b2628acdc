package dev.isoline.ledger;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;

/**
 * The other side of the benchmarks: the same store, tables and statements, but each unit of work is
 * committed by itself, by the thread that asks for it, before {@code write} returns.
 */
public final class OneByOneLedger implements Ledger {

    /** Who waits for whom when two threads want to write. */
    public enum Waiting {
        /** Each thread has its connection; the store's own locks decide. */
        IN_THE_STORE,
        /** Threads queue up in this process for one connection. */
        IN_LINE
    }

    private final Store store;
    private final Waiting waiting;
    private final ReentrantLock line = new ReentrantLock();
    private final List<Session> sessions = new CopyOnWriteArrayList<>();
    private final ThreadLocal<Session> own = ThreadLocal.withInitial(this::session);
    private final Session shared;

    private OneByOneLedger(Store store, Waiting waiting) {
        this.store = store;
        this.waiting = waiting;
        this.shared = session();
    }

    /** As {@link LedgerFactory#open}. */
    public static OneByOneLedger open(
            String url, String user, String password, Path dataDir, Waiting waiting) {
        return new OneByOneLedger(LedgerFactory.store(url, user, password, dataDir), waiting);
    }

    /** The future is complete; a unit that fails is rolled back. */
    @Override
    public <T> CompletableFuture<T> write(Function<Tables, T> work) {
        if (waiting == Waiting.IN_THE_STORE) {
            return committed(own.get(), work);
        }
        line.lock();
        try {
            return committed(shared, work);
        } finally {
            line.unlock();
        }
    }

    private <T> CompletableFuture<T> committed(Session session, Function<Tables, T> work) {
        try {
            session.execute(store.begin());
            T value = work.apply(new Tables(session));
            session.execute("COMMIT");
            return CompletableFuture.completedFuture(value);
        } catch (RuntimeException e) {
            session.execute("ROLLBACK");
            return CompletableFuture.failedFuture(e);
        }
    }

    @Override
    public <T> T read(Function<Tables, T> query) {
        try (Session session = store.reader()) {
            return query.apply(new Tables(session));
        }
    }

    @Override
    public void close() {
        sessions.forEach(Session::close);
        store.close();
    }

    private Session session() {
        Session session = store.writer();
        sessions.add(session);
        return session;
    }
}
