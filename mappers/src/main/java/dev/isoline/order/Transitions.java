package dev.isoline.order;

import static dev.isoline.order.OrderEvent.CANCEL_REQUESTED;
import static dev.isoline.order.OrderEvent.HELD;
import static dev.isoline.order.OrderEvent.RECORDING_STARTED;
import static dev.isoline.order.OrderEvent.RECORDING_UNUSABLE;
import static dev.isoline.order.OrderEvent.RELEASED;
import static dev.isoline.order.OrderEvent.RESULT_COMPUTED;
import static dev.isoline.order.OrderEvent.RESULT_CONFIRMED;
import static dev.isoline.order.OrderEvent.RESULT_CORRECTED;
import static dev.isoline.order.OrderEvent.SCHEDULED;
import static dev.isoline.order.OrderState.ACCEPTED;
import static dev.isoline.order.OrderState.CANCELLED;
import static dev.isoline.order.OrderState.COMPLETED;
import static dev.isoline.order.OrderState.ENTERED_IN_ERROR;
import static dev.isoline.order.OrderState.FAILED;
import static dev.isoline.order.OrderState.ON_HOLD;
import static dev.isoline.order.OrderState.READY;
import static dev.isoline.order.OrderState.RECEIVED;
import static dev.isoline.order.OrderState.RECORDING;
import static dev.isoline.order.OrderState.RECORDING_RECEIVED;
import static dev.isoline.order.OrderState.REJECTED;
import static dev.isoline.order.OrderState.REVIEW;
import static java.util.Map.entry;

import java.util.Map;
import java.util.Optional;

/**
 * Which event leads from which state to which: one table, printed in docs/flows/order-states.md. A
 * cell that is not there is a refused event; the order stays where it is.
 */
public final class Transitions {

    /** One cell of the table: an event in a state. */
    public record Cell(OrderState state, OrderEvent event) {}

    // spotless:off
    private static final Map<Cell, OrderState> TABLE = Map.ofEntries(
            on(RECEIVED,           HELD,                          ON_HOLD),
            on(RECEIVED,           RELEASED,                      ACCEPTED),
            on(RECEIVED,           OrderEvent.REJECTED,           REJECTED),
            on(RECEIVED,           CANCEL_REQUESTED,              CANCELLED),
            on(RECEIVED,           OrderEvent.ENTERED_IN_ERROR,   ENTERED_IN_ERROR),

            on(ON_HOLD,            HELD,                          ON_HOLD),
            on(ON_HOLD,            RELEASED,                      ACCEPTED),
            on(ON_HOLD,            OrderEvent.REJECTED,           REJECTED),
            on(ON_HOLD,            CANCEL_REQUESTED,              CANCELLED),
            on(ON_HOLD,            OrderEvent.ENTERED_IN_ERROR,   ENTERED_IN_ERROR),

            on(ACCEPTED,           HELD,                          ON_HOLD),
            on(ACCEPTED,           RELEASED,                      ACCEPTED),
            on(ACCEPTED,           SCHEDULED,                     READY),
            on(ACCEPTED,           OrderEvent.REJECTED,           REJECTED),
            on(ACCEPTED,           CANCEL_REQUESTED,              CANCELLED),
            on(ACCEPTED,           RECORDING_STARTED,             RECORDING),
            on(ACCEPTED,           OrderEvent.RECORDING_RECEIVED, RECORDING_RECEIVED),
            on(ACCEPTED,           OrderEvent.ENTERED_IN_ERROR,   ENTERED_IN_ERROR),

            on(READY,              HELD,                          ON_HOLD),
            on(READY,              RELEASED,                      READY),
            on(READY,              OrderEvent.REJECTED,           REJECTED),
            on(READY,              CANCEL_REQUESTED,              CANCELLED),
            on(READY,              RECORDING_STARTED,             RECORDING),
            on(READY,              OrderEvent.RECORDING_RECEIVED, RECORDING_RECEIVED),
            on(READY,              OrderEvent.ENTERED_IN_ERROR,   ENTERED_IN_ERROR),

            on(RECORDING,          OrderEvent.RECORDING_RECEIVED, RECORDING_RECEIVED),
            on(RECORDING,          RECORDING_UNUSABLE,            FAILED),
            on(RECORDING,          OrderEvent.ENTERED_IN_ERROR,   ENTERED_IN_ERROR),

            on(RECORDING_RECEIVED, OrderEvent.RECORDING_RECEIVED, RECORDING_RECEIVED),
            on(RECORDING_RECEIVED, RECORDING_UNUSABLE,            FAILED),
            on(RECORDING_RECEIVED, RESULT_COMPUTED,               REVIEW),
            on(RECORDING_RECEIVED, OrderEvent.ENTERED_IN_ERROR,   ENTERED_IN_ERROR),

            on(REVIEW,             OrderEvent.RECORDING_RECEIVED, RECORDING_RECEIVED),
            on(REVIEW,             RECORDING_UNUSABLE,            FAILED),
            on(REVIEW,             RESULT_COMPUTED,               REVIEW),
            on(REVIEW,             RESULT_CONFIRMED,              COMPLETED),
            on(REVIEW,             OrderEvent.ENTERED_IN_ERROR,   ENTERED_IN_ERROR),

            on(COMPLETED,          RESULT_CORRECTED,              COMPLETED),
            on(COMPLETED,          OrderEvent.ENTERED_IN_ERROR,   ENTERED_IN_ERROR),

            on(REJECTED,           OrderEvent.ENTERED_IN_ERROR,   ENTERED_IN_ERROR),

            on(CANCELLED,          CANCEL_REQUESTED,              CANCELLED),
            on(CANCELLED,          OrderEvent.ENTERED_IN_ERROR,   ENTERED_IN_ERROR),

            on(FAILED,             CANCEL_REQUESTED,              CANCELLED),
            on(FAILED,             RECORDING_STARTED,             RECORDING),
            on(FAILED,             OrderEvent.RECORDING_RECEIVED, RECORDING_RECEIVED),
            on(FAILED,             OrderEvent.ENTERED_IN_ERROR,   ENTERED_IN_ERROR),

            on(ENTERED_IN_ERROR,   OrderEvent.ENTERED_IN_ERROR,   ENTERED_IN_ERROR));
    // spotless:on

    private Transitions() {}

    /** The state after the event; empty when the event is refused. */
    public static Optional<OrderState> next(OrderState state, OrderEvent event) {
        return Optional.ofNullable(TABLE.get(new Cell(state, event)));
    }

    /**
     * Why the event is refused, as its sender is told.
     *
     * @param location what asked for it, such as {@code ORC-1} or {@code Task.status}
     */
    public static Problem refusal(OrderState state, OrderEvent event, String location) {
        return Problem.error(
                Problem.Kind.CONFLICT,
                location,
                event.words() + " is not possible for this order: " + state.words() + ".");
    }

    private static Map.Entry<Cell, OrderState> on(OrderState s, OrderEvent e, OrderState next) {
        return entry(new Cell(s, e), next);
    }
}
