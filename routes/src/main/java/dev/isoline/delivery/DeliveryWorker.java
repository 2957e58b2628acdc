package dev.isoline.delivery;

import dev.isoline.ledger.DeliveryTable.DeliveryRow;
import dev.isoline.ledger.Ledger;
import dev.isoline.settings.IsolineProperties.DeliverySettings;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Empties the outbox: claims the due heads of lanes and hands them to their destination. All it
 * knows is in the table, so another worker, or this one after a crash, goes on where it stopped.
 */
public final class DeliveryWorker implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(DeliveryWorker.class);
    private static final long LOOK_UP_MILLIS = 200;
    private static final Duration CLAIM_MARGIN = Duration.ofSeconds(30);

    private final Ledger ledger;
    private final Clock clock;
    private final Duration claim;
    private final List<Outlet> outlets;
    private final Semaphore news = new Semaphore(0);
    private final Thread thread = new Thread(this::run, "delivery");
    private Instant renewal = Instant.EPOCH;
    private volatile boolean open = true;

    /**
     * @param destinations by the name deliveries give
     */
    public DeliveryWorker(
            Ledger ledger,
            Map<String, Destination> destinations,
            DeliverySettings settings,
            Clock clock) {
        this.ledger = ledger;
        this.clock = clock;
        // Connecting and answering may each take the whole timeout; a longer one is renewed.
        this.claim = settings.timeout().multipliedBy(2).plus(CLAIM_MARGIN);
        var results = new Results(ledger, Backoff.of(settings), clock);
        this.outlets =
                destinations.entrySet().stream()
                        .map(e -> new Outlet(e.getKey(), e.getValue(), results, this::wake))
                        .toList();
        thread.setDaemon(true);
    }

    public void start() {
        thread.start();
    }

    /** Looks at the table now and not only at the next look-up, 0.2 s later at most. */
    public void wake() {
        news.release();
    }

    /** Ends attempts under way; what was not answered stays pending. */
    @Override
    public void close() {
        open = false;
        wake();
        try {
            thread.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        outlets.forEach(Outlet::close);
    }

    private void run() {
        boolean told = false;
        while (open) {
            try {
                told = told || tellOfStrays();
                renewClaims();
                outlets.forEach(this::serve);
            } catch (RuntimeException e) {
                LOG.warn("The outbox could not be read: {}", e.getMessage());
            }
            pause();
        }
    }

    /** A large object may take longer than a claim lasts. */
    private void renewClaims() {
        Instant now = clock.instant();
        List<Long> underWay = outlets.stream().flatMap(o -> o.underWay().stream()).toList();
        if (now.isBefore(renewal) || underWay.isEmpty()) {
            return;
        }
        renewal = now.plus(claim.dividedBy(3));
        ledger.write(t -> t.deliveries().renew(underWay, now.plus(claim))).join();
    }

    private void serve(Outlet outlet) {
        int free = outlet.free();
        Instant now = clock.instant();
        if (free > 0 && hasDue(outlet.name(), now)) {
            claim(outlet.name(), now, free).forEach(outlet::take);
        }
    }

    private boolean hasDue(String destination, Instant now) {
        return !ledger.read(t -> t.deliveries().due(destination, now, 1)).isEmpty();
    }

    private List<DeliveryRow> claim(String destination, Instant now, int limit) {
        return ledger.write(t -> t.deliveries().claim(destination, now, now.plus(claim), limit))
                .join();
    }

    /** Deliveries whose destination is no longer configured wait; nobody else would say so. */
    private boolean tellOfStrays() {
        var known = outlets.stream().map(Outlet::name).toList();
        ledger.read(t -> t.deliveries().pendingDestinations()).stream()
                .filter(destination -> !known.contains(destination))
                .forEach(d -> LOG.warn("Deliveries wait for {}, which is not configured", d));
        return true;
    }

    private void pause() {
        try {
            news.tryAcquire(LOOK_UP_MILLIS, TimeUnit.MILLISECONDS);
            news.drainPermits();
        } catch (InterruptedException e) {
            open = false;
        }
    }
}
