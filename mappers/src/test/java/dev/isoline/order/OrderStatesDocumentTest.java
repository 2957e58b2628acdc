package dev.isoline.order;

import static java.util.stream.Collectors.joining;

import dev.isoline.fhir.SampleFile;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** docs/flows/order-states.md is the table of the code; {@code -Dgolden=update} rewrites it. */
class OrderStatesDocumentTest {

    private static final String HEAD =
            """
            # Where an order stands

            Printed from `dev.isoline.order.OrderState` and `dev.isoline.order.Transitions`; a test keeps them equal.

            ## What each state is called
            FHIR R4 request-status, task-status, diagnostic-report-status; HL7 v2.5.1 tables 0119 (ORC-1, as the gateway sends it), 0038 (ORC-5), 0123 (OBR-25).

            """;

    private static final String NOTES =
            """

            - A hold is the gateway's own decision, so ORC-1 is OH (held), not HR (held as requested).
            - After an unusable recording the order stays open for another one: the Task is failed, the ServiceRequest active, OBR-25 not X, because X would close the order at its placer.
            - Observations of an order entered in error carry W in OBX-11.

            ## What may happen
            An empty cell is a refused event: the order stays where it is and the sender is told why.

            """;

    @Test
    void the_document_prints_the_tables_of_the_code() throws IOException {
        SampleFile.assertSame(
                "docs/flows/order-states.md", HEAD + states() + NOTES + transitions());
    }

    private static String states() {
        return row(
                        "State",
                        "ServiceRequest",
                        "Task",
                        "businessStatus",
                        "ORC-1",
                        "ORC-5",
                        "OBR-25",
                        "DiagnosticReport")
                + rule(8)
                + Arrays.stream(OrderState.values())
                        .map(
                                s ->
                                        row(
                                                s.name(),
                                                s.serviceRequestStatus(),
                                                s.taskStatus(),
                                                s.businessStatus(),
                                                s.orderControl(),
                                                s.orderStatus(),
                                                s.resultStatus(),
                                                s.reportStatus()))
                        .collect(joining());
    }

    private static String transitions() {
        List<OrderState> states = List.of(OrderState.values());
        return row(
                        Stream.concat(Stream.of("Event"), states.stream().map(Enum::name))
                                .toArray(String[]::new))
                + rule(states.size() + 1)
                + Arrays.stream(OrderEvent.values())
                        .map(
                                event ->
                                        row(
                                                Stream.concat(
                                                                Stream.of(event.name()),
                                                                states.stream()
                                                                        .map(s -> cell(s, event)))
                                                        .toArray(String[]::new)))
                        .collect(joining());
    }

    private static String cell(OrderState state, OrderEvent event) {
        Optional<OrderState> next = Transitions.next(state, event);
        return next.map(Enum::name).orElse("");
    }

    private static String row(String... cells) {
        return "| " + String.join(" | ", cells) + " |\n";
    }

    private static String rule(int columns) {
        return "|" + "---|".repeat(columns) + "\n";
    }
}
