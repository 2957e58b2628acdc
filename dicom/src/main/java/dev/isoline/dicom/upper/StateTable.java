package dev.isoline.dicom.upper;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/** PS3.8 table 9-10: events down, states across; a dot is an empty cell. */
final class StateTable {

    // spotless:off
    private static final String CELLS = """
            Sta                          1    2    3    4    5    6    7    8    9    10    11   12   13
            A_ASSOCIATE_REQUEST          AE-1 .    .    .    .    .    .    .    .    .     .    .    .
            TRANSPORT_CONFIRMATION       .    .    .    AE-2 .    .    .    .    .    .     .    .    .
            A_ASSOCIATE_AC_PDU           .    AA-1 AA-8 .    AE-3 AA-8 AA-8 AA-8 AA-8 AA-8  AA-8 AA-8 AA-6
            A_ASSOCIATE_RJ_PDU           .    AA-1 AA-8 .    AE-4 AA-8 AA-8 AA-8 AA-8 AA-8  AA-8 AA-8 AA-6
            TRANSPORT_INDICATION         AE-5 .    .    .    .    .    .    .    .    .     .    .    .
            A_ASSOCIATE_RQ_PDU           .    AE-6 AA-8 .    AA-8 AA-8 AA-8 AA-8 AA-8 AA-8  AA-8 AA-8 AA-7
            A_ASSOCIATE_RESPONSE_ACCEPT  .    .    AE-7 .    .    .    .    .    .    .     .    .    .
            A_ASSOCIATE_RESPONSE_REJECT  .    .    AE-8 .    .    .    .    .    .    .     .    .    .
            P_DATA_REQUEST               .    .    .    .    .    DT-1 .    AR-7 .    .     .    .    .
            P_DATA_TF_PDU                .    AA-1 AA-8 .    AA-8 DT-2 AR-6 AA-8 AA-8 AA-8  AA-8 AA-8 AA-6
            A_RELEASE_REQUEST            .    .    .    .    .    AR-1 .    .    .    .     .    .    .
            A_RELEASE_RQ_PDU             .    AA-1 AA-8 .    AA-8 AR-2 AR-8 AA-8 AA-8 AA-8  AA-8 AA-8 AA-6
            A_RELEASE_RP_PDU             .    AA-1 AA-8 .    AA-8 AA-8 AR-3 AA-8 AA-8 AR-10 AR-3 AA-8 AA-6
            A_RELEASE_RESPONSE           .    .    .    .    .    .    .    AR-4 AR-9 .     .    AR-4 .
            A_ABORT_REQUEST              .    .    AA-1 AA-2 AA-1 AA-1 AA-1 AA-1 AA-1 AA-1  AA-1 AA-1 .
            A_ABORT_PDU                  .    AA-2 AA-3 .    AA-3 AA-3 AA-3 AA-3 AA-3 AA-3  AA-3 AA-3 AA-2
            TRANSPORT_CLOSED             .    AA-5 AA-4 AA-4 AA-4 AA-4 AA-4 AA-4 AA-4 AA-4  AA-4 AA-4 AR-5
            ARTIM_EXPIRED                .    AA-2 .    .    .    .    .    .    .    .     .    .    AA-2
            INVALID_PDU                  .    AA-1 AA-8 .    AA-8 AA-8 AA-8 AA-8 AA-8 AA-8  AA-8 AA-8 AA-7
            """;
    // spotless:on

    private static final Map<Event, Map<State, Action>> TABLE = parse();

    private StateTable() {}

    /** The action for an event in a state; empty where the event cannot occur there. */
    static Optional<Action> action(Event event, State state) {
        return Optional.ofNullable(TABLE.get(event).get(state));
    }

    private static Map<Event, Map<State, Action>> parse() {
        var table = new EnumMap<Event, Map<State, Action>>(Event.class);
        CELLS.lines().skip(1).map(line -> line.split(" +")).forEach(row -> parse(table, row));
        return table;
    }

    private static void parse(Map<Event, Map<State, Action>> table, String... row) {
        var cells = new EnumMap<State, Action>(State.class);
        for (State state : State.values()) {
            String cell = row[state.ordinal() + 1];
            if (!cell.equals(".")) {
                cells.put(state, Action.valueOf(cell.replace('-', '_')));
            }
        }
        table.put(Event.valueOf(row[0]), cells);
    }
}
