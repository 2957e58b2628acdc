package dev.isoline.delivery;

import dev.isoline.ledger.DeliveryTable.DeliveryRow;
import java.io.IOException;
import java.net.ConnectException;
import java.net.SocketTimeoutException;
import java.net.http.HttpTimeoutException;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** One destination with as many threads as it may serve lanes; a slow one holds up no other. */
final class Outlet implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(Outlet.class);
    private static final long GRACE_SECONDS = 2;

    private final String name;
    private final Destination destination;
    private final Results results;
    private final Runnable done;
    private final Semaphore permits;
    private final ExecutorService threads;
    private final Set<Long> underWay = ConcurrentHashMap.newKeySet();
    private volatile boolean open = true;

    Outlet(String name, Destination destination, Results results, Runnable done) {
        this.name = name;
        this.destination = destination;
        this.results = results;
        this.done = done;
        this.permits = new Semaphore(destination.parallel());
        var count = new AtomicInteger();
        this.threads =
                Executors.newFixedThreadPool(
                        destination.parallel(),
                        task -> daemon(task, "to-" + name + "-" + count.incrementAndGet()));
    }

    String name() {
        return name;
    }

    int free() {
        return permits.availablePermits();
    }

    /** Ids of the deliveries being attempted; their claims must not lapse. */
    Set<Long> underWay() {
        return underWay;
    }

    /** Only the worker's thread takes, and no more than are free. */
    void take(DeliveryRow row) {
        permits.acquireUninterruptibly();
        underWay.add(row.id());
        threads.execute(() -> attempt(row));
    }

    private void attempt(DeliveryRow row) {
        try {
            Verdict verdict = send(row);
            if (open || verdict.outcome() == Verdict.Outcome.DELIVERED) {
                results.store(row, verdict);
            } else {
                results.untried(row);
            }
        } catch (RuntimeException e) {
            LOG.warn("The result of delivery {} could not be stored; it is sent again", row.id());
        } finally {
            underWay.remove(row.id());
            permits.release();
            done.run();
        }
    }

    private Verdict send(DeliveryRow row) {
        try {
            return destination.send(row.delivery());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return Verdict.retry("interrupted");
        } catch (IOException e) {
            return Verdict.retry(words(e));
        } catch (RuntimeException e) {
            return Verdict.retry("internal error: " + e.getClass().getSimpleName());
        }
    }

    /** Of the kind only: an exception's own text may hold a path or an answer. */
    private static String words(IOException failure) {
        if (failure instanceof SocketTimeoutException || failure instanceof HttpTimeoutException) {
            return "no answer in time";
        }
        if (failure instanceof ConnectException) {
            return "no connection";
        }
        return "connection failed: " + failure.getClass().getSimpleName();
    }

    @Override
    public void close() {
        threads.shutdown();
        try {
            if (!threads.awaitTermination(GRACE_SECONDS, TimeUnit.SECONDS)) {
                open = false;
                threads.shutdownNow();
                destination.close();
                threads.awaitTermination(GRACE_SECONDS, TimeUnit.SECONDS);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        destination.close();
    }

    private static Thread daemon(Runnable task, String name) {
        var thread = new Thread(task, name);
        thread.setDaemon(true);
        return thread;
    }
}
