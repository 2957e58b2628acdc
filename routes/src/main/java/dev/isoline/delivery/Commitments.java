package dev.isoline.delivery;

import dev.isoline.dicom.Uid;
import dev.isoline.dicom.spi.CommitmentRequest;
import dev.isoline.dicom.spi.CommitmentResult;
import dev.isoline.dicom.spi.CommitmentResult.Failure;
import dev.isoline.dicom.spi.Peer;
import dev.isoline.dicom.spi.SopReference;
import dev.isoline.dicom.spi.Status;
import dev.isoline.ledger.CommitmentTable.CommitmentRow;
import dev.isoline.ledger.CommitmentTable.ObjectRow;
import dev.isoline.ledger.DeliveryTable.DeliveryRow;
import dev.isoline.ledger.Ledger;
import dev.isoline.ledger.Tables;
import dev.isoline.settings.IsolineProperties;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/**
 * Storage commitment as its user (PS3.4 J.3): a transaction is in the ledger before it is asked
 * for, so that a report finds it hours and restarts later, on whatever association it comes.
 */
@Component
public class Commitments {

    private static final Logger LOG = LoggerFactory.getLogger(Commitments.class);

    private final Ledger ledger;
    private final IsolineProperties properties;
    private final Clock clock;

    public Commitments(Ledger ledger, IsolineProperties properties, Clock clock) {
        this.ledger = ledger;
        this.properties = properties;
        this.clock = clock;
    }

    /** A new transaction over what the archive has stored of an order; empty: nothing is left. */
    Optional<CommitmentRequest> open(String archive, String orderId) throws IOException {
        Collection<ObjectRow> objects =
                objects(ledger.read(t -> CommitmentLane.stored(t, archive, orderId)));
        if (objects.isEmpty()) {
            return Optional.empty();
        }
        String transaction = Uid.of(UUID.randomUUID());
        var row = new CommitmentRow(transaction, archive, orderId, clock.instant(), null);
        ledger.write(
                        t -> {
                            t.commitments().add(row, List.copyOf(objects));
                            return null;
                        })
                .join();
        return Optional.of(
                new CommitmentRequest(
                        transaction,
                        objects.stream()
                                .map(o -> new SopReference(o.sopClass(), o.sopInstance()))
                                .toList()));
    }

    /** Each instance once (PS3.4 J.3.2.1.2). */
    private Collection<ObjectRow> objects(List<DeliveryRow> stored) throws IOException {
        Map<String, ObjectRow> objects = new LinkedHashMap<>();
        for (DeliveryRow row : stored) {
            Path file = properties.data().resolve(row.delivery().path());
            var object = ObjectFile.read(file);
            objects.put(
                    object.sopInstance(),
                    new ObjectRow(object.sopInstance(), object.sopClass(), row.id()));
        }
        return objects.values();
    }

    /**
     * An archive reports on an association of its own (PS3.4 J.3.3).
     *
     * @return success once the report is in the ledger; 0110H when the transaction is not known, or
     *     not this archive's
     */
    public Status report(Peer archive, CommitmentResult result) {
        return result(archive.calling().value(), result);
    }

    /**
     * As {@link #report}.
     *
     * @param title AE title of who reports
     */
    Status result(String title, CommitmentResult result) {
        return ledger.write(t -> result(t, title, result)).join();
    }

    private Status result(Tables tables, String title, CommitmentResult result) {
        var row = tables.commitments().byTransaction(result.transaction());
        if (row.filter(r -> title.equals(titleOf(r.destination()))).isEmpty()) {
            LOG.warn("{} reported on a commitment it was not asked for", title);
            return Status.PROCESSING_FAILURE.because("no such transaction");
        }
        if (row.get().reportedAt() == null) {
            new Report(tables, row.get(), backoff(), clock.instant()).take(result);
        }
        return Status.SUCCESS;
    }

    private Backoff backoff() {
        return Backoff.of(properties.delivery());
    }

    /** Empty when the destination is no longer configured: nobody may report for it. */
    private String titleOf(String destination) {
        var settings = properties.destinations().get(destination);
        var peer = settings == null ? null : properties.dicom().peers().get(settings.peer());
        return peer == null ? "" : peer.aeTitle();
    }

    /** One report within a unit of work. */
    private record Report(Tables tables, CommitmentRow row, Backoff backoff, Instant at) {

        void take(CommitmentResult result) {
            var objects = new LinkedHashMap<String, ObjectRow>();
            tables.commitments()
                    .objects(row.transaction())
                    .forEach(object -> objects.put(object.sopInstance(), object));
            result.committed()
                    .forEach(reference -> committed(objects.get(reference.sopInstance())));
            result.failed()
                    .forEach(
                            failure ->
                                    failed(
                                            objects.get(failure.reference().sopInstance()),
                                            failure));
            tables.commitments().reported(row.transaction(), at);
            close();
        }

        /** What was not asked for is passed over. */
        private void committed(ObjectRow object) {
            if (object != null
                    && tables.deliveries()
                            .committed(object.delivery(), at, "committed, " + row.transaction())) {
                tell(object, "delivered", "committed");
            }
        }

        private void failed(ObjectRow object, Failure failure) {
            if (object == null || isDuplicate(failure)) {
                return; // not asked for, or to be asked for under another transaction
            }
            Verdict verdict = StoreStatus.judge(failure.reason().code());
            String error = "not committed: " + verdict.text();
            int tried = tables.deliveries().byId(object.delivery()).orElseThrow().attempts();
            if (verdict.outcome() == Verdict.Outcome.RETRY && !backoff.isExhausted(tried)) {
                if (tables.deliveries().sendAgain(object.delivery(), after(tried), error)) {
                    tell(object, "not committed", verdict.text() + ", sent again");
                }
            } else if (tables.deliveries().parkStored(object.delivery(), error)) {
                tell(object, "parked", error);
            }
        }

        private static boolean isDuplicate(Failure failure) {
            return failure.reason().code() == Status.DUPLICATE_TRANSACTION.code();
        }

        private Instant after(int tried) {
            return at.plus(backoff.pauseAfter(tried));
        }

        /** The request is done with, unless the report left objects out: then it is made again. */
        private void close() {
            boolean complete =
                    CommitmentLane.stored(tables, row.destination(), row.orderId()).isEmpty();
            for (DeliveryRow open : CommitmentLane.open(tables, row.destination(), row.orderId())) {
                if (complete) {
                    tables.deliveries().delivered(open.id(), at, "reported, " + row.transaction());
                } else {
                    tables.deliveries()
                            .retry(
                                    open.id(),
                                    after(open.attempts() + 1),
                                    "the report left objects out");
                }
            }
        }

        private void tell(ObjectRow object, String event, String text) {
            var delivery = tables.deliveries().byId(object.delivery()).orElseThrow();
            tables.timeline().add(Results.entry(delivery, at, event, text));
        }
    }
}
