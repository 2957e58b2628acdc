package dev.isoline.recordings;

import dev.isoline.ecg.RecordingHeader;
import dev.isoline.ecgfhir.RecordingIdentity;
import dev.isoline.intake.OrderDesk;
import dev.isoline.intake.Source;
import dev.isoline.ledger.OrderTable.OrderRow;
import dev.isoline.ledger.RecordingTable.RecordingRow;
import dev.isoline.ledger.RecordingTable.State;
import dev.isoline.ledger.Tables;
import dev.isoline.order.OrderEvent;
import dev.isoline.order.OrderState;
import dev.isoline.order.Problem;
import dev.isoline.order.StableId;
import dev.isoline.order.Transitions;
import dev.isoline.recordings.RecordingReception.Brought;
import dev.isoline.recordings.RecordingReception.Received;
import dev.isoline.recordings.RecordingRefused.Reason;
import dev.isoline.resources.OrderResources;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;

/** Which order a recording belongs to, and whether it may be taken as that order's. */
@Component
public class RecordingMatch {

    /** States a recording waits in until the order can take it. */
    private static final Set<OrderState> NOT_YET = Set.of(OrderState.RECEIVED, OrderState.ON_HOLD);

    private final OrderDesk orders;

    public RecordingMatch(OrderDesk orders) {
        this.orders = orders;
    }

    Received enter(Tables tables, Brought brought, String number, Source source) {
        var kept = brought.kept();
        var before = tables.recordings().bySha256(kept.sha256());
        if (before.isPresent()) {
            return new Received(before.get(), false);
        }
        OrderRow order = order(tables, number);
        String problem = problem(tables, brought.header(), order);
        var row =
                new RecordingRow(
                        StableId.of("Recording", kept.sha256()),
                        kept.sha256(),
                        order.id(),
                        kept.path(),
                        source.sender(),
                        problem.isEmpty() ? State.RECEIVED : State.HELD,
                        problem,
                        source.at());
        tables.recordings().insert(row);
        if (!brought.sopInstance().isEmpty()) {
            tables.recordings().cameAs(row.id(), brought.sopInstance());
        }
        if (problem.isEmpty()) {
            orders.recordingReceived(tables, source, order);
        }
        return new Received(row, true);
    }

    /** Looks again at a held recording; it goes on when nothing stands against it any more. */
    boolean review(Tables tables, RecordingRow row, RecordingHeader header, Source source) {
        OrderRow order = tables.orders().byId(row.orderId()).orElseThrow();
        if (!canTake(order) || !problem(tables, header, order).isEmpty()) {
            return false;
        }
        tables.recordings().update(row.with(State.RECEIVED, ""));
        orders.recordingReceived(tables, source, order);
        return true;
    }

    private static OrderRow order(Tables tables, String number) {
        if (number.isEmpty()) {
            throw new RecordingRefused(
                    Reason.UNKNOWN_ORDER,
                    "The recording names no order; give its number with the recording.");
        }
        List<OrderRow> found = tables.orders().byNumber(number);
        if (found.isEmpty()) {
            throw new RecordingRefused(Reason.UNKNOWN_ORDER, "No order has this number.");
        }
        if (found.size() > 1) {
            throw new RecordingRefused(
                    Reason.NOT_EXPECTED,
                    "Several orders have this number; use the filler order number or the accession"
                            + " number.");
        }
        OrderRow order = found.get(0);
        if (!canTake(order) && !NOT_YET.contains(order.state())) {
            throw new RecordingRefused(
                    Reason.NOT_EXPECTED,
                    Transitions.refusal(order.state(), OrderEvent.RECORDING_RECEIVED, "").text());
        }
        return order;
    }

    private static boolean canTake(OrderRow order) {
        return Transitions.next(order.state(), OrderEvent.RECORDING_RECEIVED).isPresent();
    }

    /** Why the recording is held: whose it says it is, or an order that is not ready. */
    private String problem(Tables tables, RecordingHeader header, OrderRow order) {
        OrderResources resources = orders.resources(tables, order);
        List<Problem> problems =
                RecordingIdentity.compare(
                        header.identity(), resources.serviceRequest(), resources.patient());
        if (!problems.isEmpty()) {
            return problems.stream().map(Problem::text).collect(Collectors.joining(" "));
        }
        return canTake(order) ? "" : "The order cannot take a recording yet: " + words(order) + ".";
    }

    private static String words(OrderRow order) {
        return order.state().words();
    }
}
