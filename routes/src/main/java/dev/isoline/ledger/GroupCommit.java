package dev.isoline.ledger;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;

/**
 * The one writer: takes all units that wait, runs them in one transaction, commits, and then tells
 * their callers. The time one commit takes to reach the disk is the time in which the next group
 * gathers.
 */
final class GroupCommit implements AutoCloseable {

    private static final int LARGEST_GROUP = 256;
    private static final long LOOK_UP_MILLIS = 100;

    private final Store store;
    private final BlockingQueue<Unit<?>> queue;
    private final Thread thread = new Thread(this::run, "ledger-writer");
    // One task a group: a caller's continuation costs the writer nothing and may itself wait for
    // a later group.
    private final ExecutorService callers =
            Executors.newCachedThreadPool(task -> daemon(task, "ledger-caller"));
    private volatile boolean open = true;
    private volatile boolean ended;
    private Session session;

    GroupCommit(Store store, BlockingQueue<Unit<?>> queue) {
        this.store = store;
        this.queue = queue;
        thread.setDaemon(true);
    }

    void start() {
        thread.start();
    }

    boolean isOpen() {
        return open;
    }

    boolean hasEnded() {
        return ended;
    }

    /** Returns when all that waited is committed and told. */
    @Override
    public void close() {
        open = false;
        try {
            thread.join();
            callers.shutdown();
            callers.awaitTermination(10, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void run() {
        try {
            while (open || !queue.isEmpty()) {
                commit(nextGroup());
            }
        } finally {
            open = false;
            ended = true;
            // Offered at the last moment, or left by an error that ended this thread.
            queue.removeIf(unit -> tell(unit, new LedgerException("The ledger is closed.")));
            dropSession();
        }
    }

    private List<Unit<?>> nextGroup() {
        var group = new ArrayList<Unit<?>>();
        try {
            Unit<?> first = queue.poll(LOOK_UP_MILLIS, TimeUnit.MILLISECONDS);
            if (first != null) {
                group.add(first);
                queue.drainTo(group, LARGEST_GROUP - 1);
            }
        } catch (InterruptedException e) {
            open = false;
        }
        return group;
    }

    private void commit(List<Unit<?>> group) {
        if (group.isEmpty()) {
            return;
        }
        var again = new ArrayList<Unit<?>>();
        try {
            var done = transaction(group, again);
            callers.execute(() -> done.forEach(Unit::complete));
            again.forEach(unit -> commit(List.of(unit)));
        } catch (LedgerException e) {
            dropSession();
            if (group.size() == 1) {
                tell(group.get(0), e);
            } else {
                group.forEach(unit -> commit(List.of(unit)));
            }
        }
    }

    /** Runs and commits a group; those who met another node at the same rows are put aside. */
    private List<Unit<?>> transaction(List<Unit<?>> group, List<Unit<?>> again) {
        var done = new ArrayList<Unit<?>>(group.size());
        if (session == null) {
            session = store.writer();
        }
        session.execute(store.begin());
        var tables = new Tables(session);
        for (Unit<?> unit : group) {
            (unit.run(session, tables) ? done : again).add(unit);
        }
        session.execute("COMMIT");
        return done;
    }

    private boolean tell(Unit<?> unit, LedgerException failure) {
        unit.fail(failure);
        callers.execute(unit::complete);
        return true;
    }

    private void dropSession() {
        if (session != null) {
            session.close();
            session = null;
        }
    }

    private static Thread daemon(Runnable task, String name) {
        var thread = new Thread(task, name);
        thread.setDaemon(true);
        return thread;
    }
}
