package dev.isoline.delivery;

import dev.isoline.ledger.DeliveryTable.DeliveryRow;
import dev.isoline.ledger.Ledger;
import dev.isoline.ledger.Tables;
import dev.isoline.ledger.TimelineTable.Entry;
import java.time.Clock;
import java.time.Instant;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Writes what came of an attempt into the outbox and the order's timeline. */
record Results(Ledger ledger, Backoff backoff, Clock clock) {

    private static final Logger LOG = LoggerFactory.getLogger(Results.class);

    void store(DeliveryRow row, Verdict attempt) {
        int tried = row.attempts() + 1;
        Verdict verdict = lastOr(attempt, tried);
        Instant now = clock.instant();
        ledger.write(
                        t -> {
                            switch (verdict.outcome()) {
                                case DELIVERED -> delivered(t, row, verdict.text(), now);
                                case STORED -> stored(t, row, verdict.text(), now);
                                case AWAITING ->
                                        t.deliveries()
                                                .await(
                                                        row.id(),
                                                        now.plus(verdict.patience()),
                                                        verdict.text());
                                case REFUSED -> park(t, row, verdict.text(), now);
                                case RETRY -> retry(t, row, verdict.text(), now, tried);
                            }
                            return null;
                        })
                .join();
        if (verdict.outcome() == Verdict.Outcome.REFUSED) {
            LOG.warn(
                    "Delivery {} to {} is parked: {}",
                    row.id(),
                    row.delivery().destination(),
                    verdict.text());
        }
    }

    /** The attempt was ended by us and says nothing about the receiver. */
    void untried(DeliveryRow row) {
        ledger.write(
                        t -> {
                            t.deliveries().release(row.id());
                            return null;
                        })
                .join();
    }

    /** The last attempt's failure is as good as a refusal; a last question may be answered. */
    private Verdict lastOr(Verdict attempt, int tried) {
        boolean last =
                switch (attempt.outcome()) {
                    case RETRY -> backoff.isExhausted(tried);
                    case AWAITING -> backoff.isExhausted(tried - 1);
                    default -> false;
                };
        return last ? Verdict.refused(attempt.text() + ", " + tried + " attempts") : attempt;
    }

    private void retry(Tables tables, DeliveryRow row, String error, Instant now, int tried) {
        tables.deliveries().retry(row.id(), now.plus(backoff.pauseAfter(tried)), error);
    }

    private static void delivered(Tables tables, DeliveryRow row, String receipt, Instant now) {
        tables.deliveries().delivered(row.id(), now, receipt);
        tables.timeline().add(entry(row, now, "delivered", receipt));
    }

    private static void stored(Tables tables, DeliveryRow row, String receipt, Instant now) {
        tables.deliveries().stored(row.id(), receipt);
        tables.timeline().add(entry(row, now, "stored", receipt));
        CommitmentLane.ask(tables, row.delivery(), now);
    }

    private static void park(Tables tables, DeliveryRow row, String error, Instant now) {
        tables.deliveries().park(row.id(), error);
        tables.timeline().add(entry(row, now, "parked", error));
        CommitmentLane.ask(tables, row.delivery(), now);
    }

    static Entry entry(DeliveryRow row, Instant at, String event, String text) {
        String detail = row.delivery().kind() + " to " + row.delivery().destination() + ": " + text;
        return new Entry(row.delivery().orderId(), at, event, "delivery", detail);
    }
}
