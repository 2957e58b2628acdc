package dev.isoline.ledger;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * {@code delivery}: the outbox. A lane is destination + order; deliveries of a lane keep their
 * order.
 */
public interface DeliveryTable {

    enum State {
        PENDING,
        DELIVERED,
        PARKED
    }

    /**
     * @param kind what it is: {@code order}, {@code status}, {@code report}, {@code oru}, {@code
     *     object}
     * @param payload the exact bytes to send; null when {@code path} names a file instead
     * @param path file relative to the data folder, or null
     */
    record NewDelivery(
            String destination,
            String orderId,
            String kind,
            String contentType,
            byte[] payload,
            String path,
            Instant at) {}

    record DeliveryRow(
            long id,
            NewDelivery delivery,
            State state,
            int attempts,
            Instant nextTry,
            String lastError) {}

    /** Appends to the lane of its destination and order. */
    long add(NewDelivery delivery);

    /**
     * The heads of lanes that may be tried now: the oldest pending delivery of each lane whose next
     * try is due. A lane whose head is parked waits until a person decides.
     */
    List<DeliveryRow> due(Instant now, int limit);

    void delivered(long id, Instant at, String receipt);

    void retry(long id, Instant nextTry, String error);

    void park(long id, String error);

    /** Makes a parked delivery pending again. */
    void resume(long id, Instant now);

    Optional<DeliveryRow> byId(long id);

    List<DeliveryRow> ofOrder(String orderId);

    List<DeliveryRow> byState(State state, int limit);
}
