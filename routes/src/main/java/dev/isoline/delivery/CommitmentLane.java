package dev.isoline.delivery;

import dev.isoline.ledger.DeliveryTable.DeliveryRow;
import dev.isoline.ledger.DeliveryTable.NewDelivery;
import dev.isoline.ledger.DeliveryTable.State;
import dev.isoline.ledger.Tables;
import java.time.Instant;
import java.util.List;

/**
 * The lane in which an archive is asked to commit itself to an order's objects. It stands beside
 * the lane of the objects, so that an archive that takes hours holds up no later object.
 */
final class CommitmentLane {

    static final String KIND = "commitment";
    private static final String SUFFIX = "/commitment";
    private static final String DICOM = "application/dicom";

    private CommitmentLane() {}

    /** Its name, where {@code archive} is the destination of the objects. */
    static String of(String archive) {
        return archive + SUFFIX;
    }

    /** Objects of the order the archive has and has not committed itself to. */
    static List<DeliveryRow> stored(Tables tables, String archive, String orderId) {
        return inState(tables, archive, orderId, State.STORED);
    }

    /**
     * Puts a request into the outbox when all objects are with the archive that can be: one request
     * for all of them.
     */
    static void ask(Tables tables, NewDelivery object, Instant at) {
        String archive = object.destination();
        String order = object.orderId();
        if (!stored(tables, archive, order).isEmpty()
                && nothingCanFollow(tables, archive, order)
                && open(tables, archive, order).isEmpty()) {
            tables.deliveries()
                    .add(new NewDelivery(of(archive), order, KIND, DICOM, null, null, at));
        }
    }

    /** What stands behind a parked delivery waits for a person. */
    private static boolean nothingCanFollow(Tables tables, String archive, String orderId) {
        return tables.deliveries().ofLane(archive, orderId).stream()
                .takeWhile(row -> row.state() != State.PARKED)
                .noneMatch(row -> row.state() == State.PENDING);
    }

    /** Requests that wait to be sent or to be reported on. */
    static List<DeliveryRow> open(Tables tables, String archive, String orderId) {
        return inState(tables, of(archive), orderId, State.PENDING);
    }

    private static List<DeliveryRow> inState(
            Tables tables, String destination, String orderId, State state) {
        return tables.deliveries().ofLane(destination, orderId).stream()
                .filter(row -> row.state() == state)
                .toList();
    }
}
