package dev.isoline.delivery;

import dev.isoline.ledger.DeliveryTable.NewDelivery;
import java.io.IOException;

/** A receiving system. An attempt sends the same bytes as the one before it. */
public interface Destination extends AutoCloseable {

    /**
     * Sends and waits for the answer.
     *
     * @throws IOException when there was no answer: it is tried again later
     */
    Verdict send(NewDelivery delivery) throws IOException, InterruptedException;

    /** How many lanes it may serve at the same time. */
    int parallel();

    /** Ends attempts under way. */
    @Override
    default void close() {}
}
