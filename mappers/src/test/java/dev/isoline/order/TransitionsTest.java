package dev.isoline.order;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/**
 * One class per state, one method per event. Which events are possible: common practice, no source;
 * a recorded order is not cancelled (table 0119, UC) and a final result never becomes less than
 * final (FHIR R4 diagnosticreport.html, status).
 */
class TransitionsTest {

    @Nested
    class Received {

        @Test
        void held_leads_to_on_hold() {
            leads(OrderState.RECEIVED, OrderEvent.HELD, OrderState.ON_HOLD);
        }

        @Test
        void released_leads_to_accepted() {
            leads(OrderState.RECEIVED, OrderEvent.RELEASED, OrderState.ACCEPTED);
        }

        @Test
        void rejected_leads_to_rejected() {
            leads(OrderState.RECEIVED, OrderEvent.REJECTED, OrderState.REJECTED);
        }

        @Test
        void scheduled_is_refused() {
            refused(OrderState.RECEIVED, OrderEvent.SCHEDULED);
        }

        @Test
        void cancel_requested_leads_to_cancelled() {
            leads(OrderState.RECEIVED, OrderEvent.CANCEL_REQUESTED, OrderState.CANCELLED);
        }

        @Test
        void recording_started_is_refused() {
            refused(OrderState.RECEIVED, OrderEvent.RECORDING_STARTED);
        }

        @Test
        void recording_received_is_refused() {
            refused(OrderState.RECEIVED, OrderEvent.RECORDING_RECEIVED);
        }

        @Test
        void recording_unusable_is_refused() {
            refused(OrderState.RECEIVED, OrderEvent.RECORDING_UNUSABLE);
        }

        @Test
        void result_computed_is_refused() {
            refused(OrderState.RECEIVED, OrderEvent.RESULT_COMPUTED);
        }

        @Test
        void result_confirmed_is_refused() {
            refused(OrderState.RECEIVED, OrderEvent.RESULT_CONFIRMED);
        }

        @Test
        void result_corrected_is_refused() {
            refused(OrderState.RECEIVED, OrderEvent.RESULT_CORRECTED);
        }

        @Test
        void entered_in_error_leads_to_entered_in_error() {
            leads(OrderState.RECEIVED, OrderEvent.ENTERED_IN_ERROR, OrderState.ENTERED_IN_ERROR);
        }
    }

    @Nested
    class OnHold {

        @Test
        void held_changes_nothing() {
            leads(OrderState.ON_HOLD, OrderEvent.HELD, OrderState.ON_HOLD);
        }

        @Test
        void released_leads_to_accepted() {
            leads(OrderState.ON_HOLD, OrderEvent.RELEASED, OrderState.ACCEPTED);
        }

        @Test
        void rejected_leads_to_rejected() {
            leads(OrderState.ON_HOLD, OrderEvent.REJECTED, OrderState.REJECTED);
        }

        @Test
        void scheduled_is_refused() {
            refused(OrderState.ON_HOLD, OrderEvent.SCHEDULED);
        }

        @Test
        void cancel_requested_leads_to_cancelled() {
            leads(OrderState.ON_HOLD, OrderEvent.CANCEL_REQUESTED, OrderState.CANCELLED);
        }

        @Test
        void recording_started_is_refused() {
            refused(OrderState.ON_HOLD, OrderEvent.RECORDING_STARTED);
        }

        @Test
        void recording_received_is_refused() {
            refused(OrderState.ON_HOLD, OrderEvent.RECORDING_RECEIVED);
        }

        @Test
        void recording_unusable_is_refused() {
            refused(OrderState.ON_HOLD, OrderEvent.RECORDING_UNUSABLE);
        }

        @Test
        void result_computed_is_refused() {
            refused(OrderState.ON_HOLD, OrderEvent.RESULT_COMPUTED);
        }

        @Test
        void result_confirmed_is_refused() {
            refused(OrderState.ON_HOLD, OrderEvent.RESULT_CONFIRMED);
        }

        @Test
        void result_corrected_is_refused() {
            refused(OrderState.ON_HOLD, OrderEvent.RESULT_CORRECTED);
        }

        @Test
        void entered_in_error_leads_to_entered_in_error() {
            leads(OrderState.ON_HOLD, OrderEvent.ENTERED_IN_ERROR, OrderState.ENTERED_IN_ERROR);
        }
    }

    @Nested
    class Accepted {

        @Test
        void held_leads_to_on_hold() {
            leads(OrderState.ACCEPTED, OrderEvent.HELD, OrderState.ON_HOLD);
        }

        @Test
        void released_changes_nothing() {
            leads(OrderState.ACCEPTED, OrderEvent.RELEASED, OrderState.ACCEPTED);
        }

        @Test
        void rejected_leads_to_rejected() {
            leads(OrderState.ACCEPTED, OrderEvent.REJECTED, OrderState.REJECTED);
        }

        @Test
        void scheduled_leads_to_ready() {
            leads(OrderState.ACCEPTED, OrderEvent.SCHEDULED, OrderState.READY);
        }

        @Test
        void cancel_requested_leads_to_cancelled() {
            leads(OrderState.ACCEPTED, OrderEvent.CANCEL_REQUESTED, OrderState.CANCELLED);
        }

        @Test
        void recording_started_leads_to_recording() {
            leads(OrderState.ACCEPTED, OrderEvent.RECORDING_STARTED, OrderState.RECORDING);
        }

        @Test
        void recording_received_leads_to_recording_received() {
            leads(
                    OrderState.ACCEPTED,
                    OrderEvent.RECORDING_RECEIVED,
                    OrderState.RECORDING_RECEIVED);
        }

        @Test
        void recording_unusable_is_refused() {
            refused(OrderState.ACCEPTED, OrderEvent.RECORDING_UNUSABLE);
        }

        @Test
        void result_computed_is_refused() {
            refused(OrderState.ACCEPTED, OrderEvent.RESULT_COMPUTED);
        }

        @Test
        void result_confirmed_is_refused() {
            refused(OrderState.ACCEPTED, OrderEvent.RESULT_CONFIRMED);
        }

        @Test
        void result_corrected_is_refused() {
            refused(OrderState.ACCEPTED, OrderEvent.RESULT_CORRECTED);
        }

        @Test
        void entered_in_error_leads_to_entered_in_error() {
            leads(OrderState.ACCEPTED, OrderEvent.ENTERED_IN_ERROR, OrderState.ENTERED_IN_ERROR);
        }
    }

    @Nested
    class Ready {

        @Test
        void held_leads_to_on_hold() {
            leads(OrderState.READY, OrderEvent.HELD, OrderState.ON_HOLD);
        }

        @Test
        void released_changes_nothing() {
            leads(OrderState.READY, OrderEvent.RELEASED, OrderState.READY);
        }

        @Test
        void rejected_leads_to_rejected() {
            leads(OrderState.READY, OrderEvent.REJECTED, OrderState.REJECTED);
        }

        @Test
        void scheduled_is_refused() {
            refused(OrderState.READY, OrderEvent.SCHEDULED);
        }

        @Test
        void cancel_requested_leads_to_cancelled() {
            leads(OrderState.READY, OrderEvent.CANCEL_REQUESTED, OrderState.CANCELLED);
        }

        @Test
        void recording_started_leads_to_recording() {
            leads(OrderState.READY, OrderEvent.RECORDING_STARTED, OrderState.RECORDING);
        }

        @Test
        void recording_received_leads_to_recording_received() {
            leads(OrderState.READY, OrderEvent.RECORDING_RECEIVED, OrderState.RECORDING_RECEIVED);
        }

        @Test
        void recording_unusable_is_refused() {
            refused(OrderState.READY, OrderEvent.RECORDING_UNUSABLE);
        }

        @Test
        void result_computed_is_refused() {
            refused(OrderState.READY, OrderEvent.RESULT_COMPUTED);
        }

        @Test
        void result_confirmed_is_refused() {
            refused(OrderState.READY, OrderEvent.RESULT_CONFIRMED);
        }

        @Test
        void result_corrected_is_refused() {
            refused(OrderState.READY, OrderEvent.RESULT_CORRECTED);
        }

        @Test
        void entered_in_error_leads_to_entered_in_error() {
            leads(OrderState.READY, OrderEvent.ENTERED_IN_ERROR, OrderState.ENTERED_IN_ERROR);
        }
    }

    @Nested
    class Recording {

        @Test
        void held_is_refused() {
            refused(OrderState.RECORDING, OrderEvent.HELD);
        }

        @Test
        void released_is_refused() {
            refused(OrderState.RECORDING, OrderEvent.RELEASED);
        }

        @Test
        void rejected_is_refused() {
            refused(OrderState.RECORDING, OrderEvent.REJECTED);
        }

        @Test
        void scheduled_is_refused() {
            refused(OrderState.RECORDING, OrderEvent.SCHEDULED);
        }

        @Test
        void cancel_requested_is_refused() {
            refused(OrderState.RECORDING, OrderEvent.CANCEL_REQUESTED);
        }

        @Test
        void recording_started_is_refused() {
            refused(OrderState.RECORDING, OrderEvent.RECORDING_STARTED);
        }

        @Test
        void recording_received_leads_to_recording_received() {
            leads(
                    OrderState.RECORDING,
                    OrderEvent.RECORDING_RECEIVED,
                    OrderState.RECORDING_RECEIVED);
        }

        @Test
        void recording_unusable_leads_to_failed() {
            leads(OrderState.RECORDING, OrderEvent.RECORDING_UNUSABLE, OrderState.FAILED);
        }

        @Test
        void result_computed_is_refused() {
            refused(OrderState.RECORDING, OrderEvent.RESULT_COMPUTED);
        }

        @Test
        void result_confirmed_is_refused() {
            refused(OrderState.RECORDING, OrderEvent.RESULT_CONFIRMED);
        }

        @Test
        void result_corrected_is_refused() {
            refused(OrderState.RECORDING, OrderEvent.RESULT_CORRECTED);
        }

        @Test
        void entered_in_error_leads_to_entered_in_error() {
            leads(OrderState.RECORDING, OrderEvent.ENTERED_IN_ERROR, OrderState.ENTERED_IN_ERROR);
        }
    }

    @Nested
    class RecordingReceived {

        @Test
        void held_is_refused() {
            refused(OrderState.RECORDING_RECEIVED, OrderEvent.HELD);
        }

        @Test
        void released_is_refused() {
            refused(OrderState.RECORDING_RECEIVED, OrderEvent.RELEASED);
        }

        @Test
        void rejected_is_refused() {
            refused(OrderState.RECORDING_RECEIVED, OrderEvent.REJECTED);
        }

        @Test
        void scheduled_is_refused() {
            refused(OrderState.RECORDING_RECEIVED, OrderEvent.SCHEDULED);
        }

        @Test
        void cancel_requested_is_refused() {
            refused(OrderState.RECORDING_RECEIVED, OrderEvent.CANCEL_REQUESTED);
        }

        @Test
        void recording_started_is_refused() {
            refused(OrderState.RECORDING_RECEIVED, OrderEvent.RECORDING_STARTED);
        }

        @Test
        void recording_received_changes_nothing() {
            leads(
                    OrderState.RECORDING_RECEIVED,
                    OrderEvent.RECORDING_RECEIVED,
                    OrderState.RECORDING_RECEIVED);
        }

        @Test
        void recording_unusable_leads_to_failed() {
            leads(OrderState.RECORDING_RECEIVED, OrderEvent.RECORDING_UNUSABLE, OrderState.FAILED);
        }

        @Test
        void result_computed_leads_to_review() {
            leads(OrderState.RECORDING_RECEIVED, OrderEvent.RESULT_COMPUTED, OrderState.REVIEW);
        }

        @Test
        void result_confirmed_is_refused() {
            refused(OrderState.RECORDING_RECEIVED, OrderEvent.RESULT_CONFIRMED);
        }

        @Test
        void result_corrected_is_refused() {
            refused(OrderState.RECORDING_RECEIVED, OrderEvent.RESULT_CORRECTED);
        }

        @Test
        void entered_in_error_leads_to_entered_in_error() {
            leads(
                    OrderState.RECORDING_RECEIVED,
                    OrderEvent.ENTERED_IN_ERROR,
                    OrderState.ENTERED_IN_ERROR);
        }
    }

    @Nested
    class Review {

        @Test
        void held_is_refused() {
            refused(OrderState.REVIEW, OrderEvent.HELD);
        }

        @Test
        void released_is_refused() {
            refused(OrderState.REVIEW, OrderEvent.RELEASED);
        }

        @Test
        void rejected_is_refused() {
            refused(OrderState.REVIEW, OrderEvent.REJECTED);
        }

        @Test
        void scheduled_is_refused() {
            refused(OrderState.REVIEW, OrderEvent.SCHEDULED);
        }

        @Test
        void cancel_requested_is_refused() {
            refused(OrderState.REVIEW, OrderEvent.CANCEL_REQUESTED);
        }

        @Test
        void recording_started_is_refused() {
            refused(OrderState.REVIEW, OrderEvent.RECORDING_STARTED);
        }

        @Test
        void recording_received_leads_to_recording_received() {
            leads(OrderState.REVIEW, OrderEvent.RECORDING_RECEIVED, OrderState.RECORDING_RECEIVED);
        }

        @Test
        void recording_unusable_leads_to_failed() {
            leads(OrderState.REVIEW, OrderEvent.RECORDING_UNUSABLE, OrderState.FAILED);
        }

        @Test
        void result_computed_changes_nothing() {
            leads(OrderState.REVIEW, OrderEvent.RESULT_COMPUTED, OrderState.REVIEW);
        }

        @Test
        void result_confirmed_leads_to_completed() {
            leads(OrderState.REVIEW, OrderEvent.RESULT_CONFIRMED, OrderState.COMPLETED);
        }

        @Test
        void result_corrected_is_refused() {
            refused(OrderState.REVIEW, OrderEvent.RESULT_CORRECTED);
        }

        @Test
        void entered_in_error_leads_to_entered_in_error() {
            leads(OrderState.REVIEW, OrderEvent.ENTERED_IN_ERROR, OrderState.ENTERED_IN_ERROR);
        }
    }

    @Nested
    class Completed {

        @Test
        void held_is_refused() {
            refused(OrderState.COMPLETED, OrderEvent.HELD);
        }

        @Test
        void released_is_refused() {
            refused(OrderState.COMPLETED, OrderEvent.RELEASED);
        }

        @Test
        void rejected_is_refused() {
            refused(OrderState.COMPLETED, OrderEvent.REJECTED);
        }

        @Test
        void scheduled_is_refused() {
            refused(OrderState.COMPLETED, OrderEvent.SCHEDULED);
        }

        @Test
        void cancel_requested_is_refused() {
            refused(OrderState.COMPLETED, OrderEvent.CANCEL_REQUESTED);
        }

        @Test
        void recording_started_is_refused() {
            refused(OrderState.COMPLETED, OrderEvent.RECORDING_STARTED);
        }

        @Test
        void recording_received_is_refused() {
            refused(OrderState.COMPLETED, OrderEvent.RECORDING_RECEIVED);
        }

        @Test
        void recording_unusable_is_refused() {
            refused(OrderState.COMPLETED, OrderEvent.RECORDING_UNUSABLE);
        }

        @Test
        void result_computed_is_refused() {
            refused(OrderState.COMPLETED, OrderEvent.RESULT_COMPUTED);
        }

        @Test
        void result_confirmed_is_refused() {
            refused(OrderState.COMPLETED, OrderEvent.RESULT_CONFIRMED);
        }

        @Test
        void result_corrected_changes_nothing() {
            leads(OrderState.COMPLETED, OrderEvent.RESULT_CORRECTED, OrderState.COMPLETED);
        }

        @Test
        void entered_in_error_leads_to_entered_in_error() {
            leads(OrderState.COMPLETED, OrderEvent.ENTERED_IN_ERROR, OrderState.ENTERED_IN_ERROR);
        }
    }

    @Nested
    class Rejected {

        @Test
        void held_is_refused() {
            refused(OrderState.REJECTED, OrderEvent.HELD);
        }

        @Test
        void released_is_refused() {
            refused(OrderState.REJECTED, OrderEvent.RELEASED);
        }

        @Test
        void rejected_is_refused() {
            refused(OrderState.REJECTED, OrderEvent.REJECTED);
        }

        @Test
        void scheduled_is_refused() {
            refused(OrderState.REJECTED, OrderEvent.SCHEDULED);
        }

        @Test
        void cancel_requested_is_refused() {
            refused(OrderState.REJECTED, OrderEvent.CANCEL_REQUESTED);
        }

        @Test
        void recording_started_is_refused() {
            refused(OrderState.REJECTED, OrderEvent.RECORDING_STARTED);
        }

        @Test
        void recording_received_is_refused() {
            refused(OrderState.REJECTED, OrderEvent.RECORDING_RECEIVED);
        }

        @Test
        void recording_unusable_is_refused() {
            refused(OrderState.REJECTED, OrderEvent.RECORDING_UNUSABLE);
        }

        @Test
        void result_computed_is_refused() {
            refused(OrderState.REJECTED, OrderEvent.RESULT_COMPUTED);
        }

        @Test
        void result_confirmed_is_refused() {
            refused(OrderState.REJECTED, OrderEvent.RESULT_CONFIRMED);
        }

        @Test
        void result_corrected_is_refused() {
            refused(OrderState.REJECTED, OrderEvent.RESULT_CORRECTED);
        }

        @Test
        void entered_in_error_leads_to_entered_in_error() {
            leads(OrderState.REJECTED, OrderEvent.ENTERED_IN_ERROR, OrderState.ENTERED_IN_ERROR);
        }
    }

    @Nested
    class Cancelled {

        @Test
        void held_is_refused() {
            refused(OrderState.CANCELLED, OrderEvent.HELD);
        }

        @Test
        void released_is_refused() {
            refused(OrderState.CANCELLED, OrderEvent.RELEASED);
        }

        @Test
        void rejected_is_refused() {
            refused(OrderState.CANCELLED, OrderEvent.REJECTED);
        }

        @Test
        void scheduled_is_refused() {
            refused(OrderState.CANCELLED, OrderEvent.SCHEDULED);
        }

        @Test
        void cancel_requested_changes_nothing() {
            leads(OrderState.CANCELLED, OrderEvent.CANCEL_REQUESTED, OrderState.CANCELLED);
        }

        @Test
        void recording_started_is_refused() {
            refused(OrderState.CANCELLED, OrderEvent.RECORDING_STARTED);
        }

        @Test
        void recording_received_is_refused() {
            refused(OrderState.CANCELLED, OrderEvent.RECORDING_RECEIVED);
        }

        @Test
        void recording_unusable_is_refused() {
            refused(OrderState.CANCELLED, OrderEvent.RECORDING_UNUSABLE);
        }

        @Test
        void result_computed_is_refused() {
            refused(OrderState.CANCELLED, OrderEvent.RESULT_COMPUTED);
        }

        @Test
        void result_confirmed_is_refused() {
            refused(OrderState.CANCELLED, OrderEvent.RESULT_CONFIRMED);
        }

        @Test
        void result_corrected_is_refused() {
            refused(OrderState.CANCELLED, OrderEvent.RESULT_CORRECTED);
        }

        @Test
        void entered_in_error_leads_to_entered_in_error() {
            leads(OrderState.CANCELLED, OrderEvent.ENTERED_IN_ERROR, OrderState.ENTERED_IN_ERROR);
        }
    }

    @Nested
    class Failed {

        @Test
        void held_is_refused() {
            refused(OrderState.FAILED, OrderEvent.HELD);
        }

        @Test
        void released_is_refused() {
            refused(OrderState.FAILED, OrderEvent.RELEASED);
        }

        @Test
        void rejected_is_refused() {
            refused(OrderState.FAILED, OrderEvent.REJECTED);
        }

        @Test
        void scheduled_is_refused() {
            refused(OrderState.FAILED, OrderEvent.SCHEDULED);
        }

        @Test
        void cancel_requested_leads_to_cancelled() {
            leads(OrderState.FAILED, OrderEvent.CANCEL_REQUESTED, OrderState.CANCELLED);
        }

        @Test
        void recording_started_leads_to_recording() {
            leads(OrderState.FAILED, OrderEvent.RECORDING_STARTED, OrderState.RECORDING);
        }

        @Test
        void recording_received_leads_to_recording_received() {
            leads(OrderState.FAILED, OrderEvent.RECORDING_RECEIVED, OrderState.RECORDING_RECEIVED);
        }

        @Test
        void recording_unusable_is_refused() {
            refused(OrderState.FAILED, OrderEvent.RECORDING_UNUSABLE);
        }

        @Test
        void result_computed_is_refused() {
            refused(OrderState.FAILED, OrderEvent.RESULT_COMPUTED);
        }

        @Test
        void result_confirmed_is_refused() {
            refused(OrderState.FAILED, OrderEvent.RESULT_CONFIRMED);
        }

        @Test
        void result_corrected_is_refused() {
            refused(OrderState.FAILED, OrderEvent.RESULT_CORRECTED);
        }

        @Test
        void entered_in_error_leads_to_entered_in_error() {
            leads(OrderState.FAILED, OrderEvent.ENTERED_IN_ERROR, OrderState.ENTERED_IN_ERROR);
        }
    }

    @Nested
    class EnteredInError {

        @Test
        void held_is_refused() {
            refused(OrderState.ENTERED_IN_ERROR, OrderEvent.HELD);
        }

        @Test
        void released_is_refused() {
            refused(OrderState.ENTERED_IN_ERROR, OrderEvent.RELEASED);
        }

        @Test
        void rejected_is_refused() {
            refused(OrderState.ENTERED_IN_ERROR, OrderEvent.REJECTED);
        }

        @Test
        void scheduled_is_refused() {
            refused(OrderState.ENTERED_IN_ERROR, OrderEvent.SCHEDULED);
        }

        @Test
        void cancel_requested_is_refused() {
            refused(OrderState.ENTERED_IN_ERROR, OrderEvent.CANCEL_REQUESTED);
        }

        @Test
        void recording_started_is_refused() {
            refused(OrderState.ENTERED_IN_ERROR, OrderEvent.RECORDING_STARTED);
        }

        @Test
        void recording_received_is_refused() {
            refused(OrderState.ENTERED_IN_ERROR, OrderEvent.RECORDING_RECEIVED);
        }

        @Test
        void recording_unusable_is_refused() {
            refused(OrderState.ENTERED_IN_ERROR, OrderEvent.RECORDING_UNUSABLE);
        }

        @Test
        void result_computed_is_refused() {
            refused(OrderState.ENTERED_IN_ERROR, OrderEvent.RESULT_COMPUTED);
        }

        @Test
        void result_confirmed_is_refused() {
            refused(OrderState.ENTERED_IN_ERROR, OrderEvent.RESULT_CONFIRMED);
        }

        @Test
        void result_corrected_is_refused() {
            refused(OrderState.ENTERED_IN_ERROR, OrderEvent.RESULT_CORRECTED);
        }

        @Test
        void entered_in_error_changes_nothing() {
            leads(
                    OrderState.ENTERED_IN_ERROR,
                    OrderEvent.ENTERED_IN_ERROR,
                    OrderState.ENTERED_IN_ERROR);
        }
    }

    @Test
    void a_refusal_says_which_event_and_why() {
        Problem refusal =
                Transitions.refusal(OrderState.COMPLETED, OrderEvent.CANCEL_REQUESTED, "ORC-1");

        assertThat(refusal.kind()).isEqualTo(Problem.Kind.CONFLICT);
        assertThat(refusal.location()).isEqualTo("ORC-1");
        assertThat(refusal.text())
                .isEqualTo(
                        "A request to cancel is not possible for this order: the final result is out.");
    }

    private static void leads(OrderState state, OrderEvent event, OrderState next) {
        assertThat(Transitions.next(state, event)).contains(next);
    }

    private static void refused(OrderState state, OrderEvent event) {
        assertThat(Transitions.next(state, event)).isEmpty();
        assertThat(Transitions.refusal(state, event, "ORC-1").isError()).isTrue();
    }
}
