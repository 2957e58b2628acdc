package dev.isoline.dicom.upper;

import java.io.IOException;
import java.util.Optional;

/** The upper layer protocol machine of one association, PS3.8 9.2; not thread-safe by itself. */
final class Machine {

    /** Who carries the steps of an action out. */
    interface Performer {
        void perform(Step step) throws IOException;
    }

    private final boolean requestor;
    private volatile State state = State.STA_1;

    Machine(boolean requestor) {
        this.requestor = requestor;
    }

    State state() {
        return state;
    }

    /** True where the event may occur now. */
    boolean allows(Event event) {
        return StateTable.action(event, state).isPresent();
    }

    /** Carries out what the table says, and moves to the next state even where a step fails. */
    void on(Event event, Performer performer) throws IOException {
        on(event, true, performer);
    }

    /**
     * @param acceptable whether the service provider accepts the A-ASSOCIATE-RQ received, AE-6
     */
    void on(Event event, boolean acceptable, Performer performer) throws IOException {
        Action action =
                action(event, acceptable)
                        .orElseThrow(() -> new IllegalStateException(event + " in " + state));
        state = action.next();
        for (Step step : action.steps()) {
            performer.perform(step);
        }
    }

    private Optional<Action> action(Event event, boolean acceptable) {
        return StateTable.action(event, state).map(a -> half(a, acceptable));
    }

    /** AE-6 and AR-8 have two halves. */
    private Action half(Action action, boolean acceptable) {
        if (action == Action.AE_6 && !acceptable) {
            return Action.AE_6_OTHERWISE;
        }
        return action == Action.AR_8 && !requestor ? Action.AR_8_ACCEPTOR : action;
    }
}
