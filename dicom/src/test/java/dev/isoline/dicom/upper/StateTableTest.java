package dev.isoline.dicom.upper;

import static dev.isoline.dicom.upper.Event.*;
import static dev.isoline.dicom.upper.State.*;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * PS3.8 (2020a) table 9-10, typed in column by column: each state with what its events do and where
 * they lead. Steps are those of tables 9-6 to 9-9. What is not listed cannot occur.
 */
class StateTableTest {

    /** The events that a PDU of no use here is, wherever one can arrive. */
    private static final List<Event> PDUS =
            List.of(
                    A_ASSOCIATE_AC_PDU,
                    A_ASSOCIATE_RJ_PDU,
                    A_ASSOCIATE_RQ_PDU,
                    P_DATA_TF_PDU,
                    A_RELEASE_RQ_PDU,
                    A_RELEASE_RP_PDU,
                    INVALID_PDU);

    private static final String PROVIDER_ABORT =
            "SEND_ABORT_OF_PROVIDER ISSUE_P_ABORT START_ARTIM -> STA_13";
    private static final String USER_ABORT = "SEND_ABORT_OF_USER START_ARTIM -> STA_13";
    private static final String ABORTED = "ISSUE CLOSE -> STA_1";
    private static final String CONNECTION_LOST = "ISSUE_P_ABORT -> STA_1";

    // spotless:off
    @TestFactory
    Stream<DynamicTest> sta_1_idle() {
        return column(true, STA_1, Map.of(
                A_ASSOCIATE_REQUEST, "CONNECT -> STA_4",
                TRANSPORT_INDICATION, "START_ARTIM -> STA_2"), "");
    }

    @TestFactory
    Stream<DynamicTest> sta_2_awaiting_associate_rq() {
        return column(false, STA_2, Map.of(
                A_ASSOCIATE_RQ_PDU, "STOP_ARTIM ISSUE -> STA_3",
                A_ABORT_PDU, "STOP_ARTIM CLOSE -> STA_1",
                TRANSPORT_CLOSED, "STOP_ARTIM -> STA_1",
                ARTIM_EXPIRED, "STOP_ARTIM CLOSE -> STA_1"), USER_ABORT);
    }

    @TestFactory
    Stream<DynamicTest> sta_3_awaiting_local_associate_response() {
        return column(false, STA_3, Map.of(
                A_ASSOCIATE_RESPONSE_ACCEPT, "SEND -> STA_6",
                A_ASSOCIATE_RESPONSE_REJECT, "SEND START_ARTIM -> STA_13",
                A_ABORT_REQUEST, USER_ABORT,
                A_ABORT_PDU, ABORTED,
                TRANSPORT_CLOSED, CONNECTION_LOST), PROVIDER_ABORT);
    }

    @TestFactory
    Stream<DynamicTest> sta_4_awaiting_transport_connection() {
        return column(true, STA_4, Map.of(
                TRANSPORT_CONFIRMATION, "SEND -> STA_5",
                A_ABORT_REQUEST, "STOP_ARTIM CLOSE -> STA_1",
                TRANSPORT_CLOSED, CONNECTION_LOST), "");
    }

    @TestFactory
    Stream<DynamicTest> sta_5_awaiting_associate_ac_or_rj() {
        return column(true, STA_5, Map.of(
                A_ASSOCIATE_AC_PDU, "ISSUE -> STA_6",
                A_ASSOCIATE_RJ_PDU, ABORTED,
                A_ABORT_REQUEST, USER_ABORT,
                A_ABORT_PDU, ABORTED,
                TRANSPORT_CLOSED, CONNECTION_LOST), PROVIDER_ABORT);
    }

    @TestFactory
    Stream<DynamicTest> sta_6_ready_for_data_transfer() {
        return column(true, STA_6, Map.of(
                P_DATA_REQUEST, "SEND -> STA_6",
                P_DATA_TF_PDU, "ISSUE -> STA_6",
                A_RELEASE_REQUEST, "SEND -> STA_7",
                A_RELEASE_RQ_PDU, "ISSUE -> STA_8",
                A_ABORT_REQUEST, USER_ABORT,
                A_ABORT_PDU, ABORTED,
                TRANSPORT_CLOSED, CONNECTION_LOST), PROVIDER_ABORT);
    }

    @TestFactory
    Stream<DynamicTest> sta_7_awaiting_release_rp_as_requestor() {
        return column(true, STA_7, Map.of(
                P_DATA_TF_PDU, "ISSUE -> STA_7",
                A_RELEASE_RQ_PDU, "ISSUE -> STA_9",
                A_RELEASE_RP_PDU, ABORTED,
                A_ABORT_REQUEST, USER_ABORT,
                A_ABORT_PDU, ABORTED,
                TRANSPORT_CLOSED, CONNECTION_LOST), PROVIDER_ABORT);
    }

    @TestFactory
    Stream<DynamicTest> sta_7_awaiting_release_rp_as_acceptor() {
        return column(false, STA_7, Map.of(
                P_DATA_TF_PDU, "ISSUE -> STA_7",
                A_RELEASE_RQ_PDU, "ISSUE -> STA_10",
                A_RELEASE_RP_PDU, ABORTED,
                A_ABORT_REQUEST, USER_ABORT,
                A_ABORT_PDU, ABORTED,
                TRANSPORT_CLOSED, CONNECTION_LOST), PROVIDER_ABORT);
    }

    @TestFactory
    Stream<DynamicTest> sta_8_awaiting_local_release_response() {
        return column(false, STA_8, Map.of(
                P_DATA_REQUEST, "SEND -> STA_8",
                A_RELEASE_RESPONSE, "SEND START_ARTIM -> STA_13",
                A_ABORT_REQUEST, USER_ABORT,
                A_ABORT_PDU, ABORTED,
                TRANSPORT_CLOSED, CONNECTION_LOST), PROVIDER_ABORT);
    }

    @TestFactory
    Stream<DynamicTest> sta_9_collision_requestor_awaiting_local_response() {
        return column(true, STA_9, Map.of(
                A_RELEASE_RESPONSE, "SEND -> STA_11",
                A_ABORT_REQUEST, USER_ABORT,
                A_ABORT_PDU, ABORTED,
                TRANSPORT_CLOSED, CONNECTION_LOST), PROVIDER_ABORT);
    }

    @TestFactory
    Stream<DynamicTest> sta_10_collision_acceptor_awaiting_release_rp() {
        return column(false, STA_10, Map.of(
                A_RELEASE_RP_PDU, "ISSUE -> STA_12",
                A_ABORT_REQUEST, USER_ABORT,
                A_ABORT_PDU, ABORTED,
                TRANSPORT_CLOSED, CONNECTION_LOST), PROVIDER_ABORT);
    }

    @TestFactory
    Stream<DynamicTest> sta_11_collision_requestor_awaiting_release_rp() {
        return column(true, STA_11, Map.of(
                A_RELEASE_RP_PDU, ABORTED,
                A_ABORT_REQUEST, USER_ABORT,
                A_ABORT_PDU, ABORTED,
                TRANSPORT_CLOSED, CONNECTION_LOST), PROVIDER_ABORT);
    }

    @TestFactory
    Stream<DynamicTest> sta_12_collision_acceptor_awaiting_local_response() {
        return column(false, STA_12, Map.of(
                A_RELEASE_RESPONSE, "SEND START_ARTIM -> STA_13",
                A_ABORT_REQUEST, USER_ABORT,
                A_ABORT_PDU, ABORTED,
                TRANSPORT_CLOSED, CONNECTION_LOST), PROVIDER_ABORT);
    }

    @TestFactory
    Stream<DynamicTest> sta_13_awaiting_transport_close() {
        return column(true, STA_13, Map.of(
                A_ASSOCIATE_RQ_PDU, "SEND_ABORT_OF_PROVIDER -> STA_13",
                INVALID_PDU, "SEND_ABORT_OF_PROVIDER -> STA_13",
                A_ABORT_PDU, "STOP_ARTIM CLOSE -> STA_1",
                TRANSPORT_CLOSED, "STOP_ARTIM -> STA_1",
                ARTIM_EXPIRED, "STOP_ARTIM CLOSE -> STA_1"), "-> STA_13");
    }
    // spotless:on

    @Test
    void a_request_the_service_provider_does_not_accept_is_rejected_in_sta_2() throws IOException {
        var machine = in(false, STA_2);
        var steps = new ArrayList<Step>();
        machine.on(A_ASSOCIATE_RQ_PDU, false, steps::add);
        assertThat(steps).containsExactly(Step.STOP_ARTIM, Step.SEND_REJECTION, Step.START_ARTIM);
        assertThat(machine.state()).isEqualTo(STA_13);
    }

    @Test
    void a_step_that_fails_does_not_keep_the_state() {
        var machine = in(true, STA_6);
        org.assertj.core.api.Assertions.assertThatThrownBy(
                () ->
                        machine.on(
                                A_RELEASE_REQUEST,
                                step -> {
                                    throw new IOException("gone");
                                }));
        assertThat(machine.state()).isEqualTo(STA_7);
    }

    /**
     * @param cells what differs from the rule of the column
     * @param otherPdus what every other PDU does; empty where none can arrive
     */
    private static Stream<DynamicTest> column(
            boolean requestor, State state, Map<Event, String> cells, String otherPdus) {
        var expected = new java.util.EnumMap<Event, String>(Event.class);
        if (!otherPdus.isEmpty()) {
            PDUS.forEach(event -> expected.put(event, otherPdus));
        }
        expected.putAll(cells);
        return EnumSet.allOf(Event.class).stream()
                .map(event -> cell(requestor, state, event, expected.getOrDefault(event, "never")));
    }

    private static DynamicTest cell(boolean requestor, State state, Event event, String expected) {
        return DynamicTest.dynamicTest(
                event.toString().toLowerCase(java.util.Locale.ROOT),
                () -> assertThat(happens(in(requestor, state), event)).isEqualTo(expected));
    }

    private static String happens(Machine machine, Event event) throws IOException {
        if (!machine.allows(event)) {
            return "never";
        }
        var steps = new StringBuilder();
        machine.on(event, step -> steps.append(step).append(' '));
        return steps + "-> " + machine.state();
    }

    /** A machine brought into a state by the shortest way of events. */
    private static Machine in(boolean requestor, State state) {
        var machine = new Machine(requestor);
        for (Event event : way(requestor, state)) {
            try {
                machine.on(event, step -> {});
            } catch (IOException e) {
                throw new IllegalStateException(e);
            }
        }
        assertThat(machine.state()).isEqualTo(state);
        return machine;
    }

    private static List<Event> way(boolean requestor, State state) {
        List<Event> established =
                requestor
                        ? List.of(A_ASSOCIATE_REQUEST, TRANSPORT_CONFIRMATION, A_ASSOCIATE_AC_PDU)
                        : List.of(
                                TRANSPORT_INDICATION,
                                A_ASSOCIATE_RQ_PDU,
                                A_ASSOCIATE_RESPONSE_ACCEPT);
        return switch (state) {
            case STA_1 -> List.of();
            case STA_2, STA_4 -> established.subList(0, 1);
            case STA_3, STA_5 -> established.subList(0, 2);
            case STA_6 -> established;
            case STA_7 -> and(established, A_RELEASE_REQUEST);
            case STA_8 -> and(established, A_RELEASE_RQ_PDU);
            case STA_9, STA_10 -> and(established, A_RELEASE_REQUEST, A_RELEASE_RQ_PDU);
            case STA_11 ->
                    and(established, A_RELEASE_REQUEST, A_RELEASE_RQ_PDU, A_RELEASE_RESPONSE);
            case STA_12 -> and(established, A_RELEASE_REQUEST, A_RELEASE_RQ_PDU, A_RELEASE_RP_PDU);
            case STA_13 -> and(established, A_ABORT_REQUEST);
        };
    }

    private static List<Event> and(List<Event> events, Event... more) {
        var all = new ArrayList<>(events);
        all.addAll(Arrays.asList(more));
        return all;
    }
}
