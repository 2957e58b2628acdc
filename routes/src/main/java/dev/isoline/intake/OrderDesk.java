package dev.isoline.intake;

import dev.isoline.ledger.OrderTable.OrderRow;
import dev.isoline.ledger.Tables;
import dev.isoline.order.OrderEvent;
import dev.isoline.resources.OrderResources;
import dev.isoline.settings.IsolineProperties;
import org.springframework.stereotype.Component;

/** What the recording does to its order. Called within a unit of work of the ledger. */
@Component
public class OrderDesk {

    private final OrderBook orders;
    private final IsolineProperties properties;

    public OrderDesk(OrderBook orders, IsolineProperties properties) {
        this.orders = orders;
        this.properties = properties;
    }

    /** The order with what is stored about it. */
    public OrderResources resources(Tables tables, OrderRow row) {
        return new Known(tables, row.updatedAt()).order(row);
    }

    /** A recording is in: the report is due from now on. */
    public void recordingReceived(Tables tables, Source source, OrderRow row) {
        var due = row.due(source.at().plus(properties.recordings().reportDue()));
        move(tables, source, due, OrderEvent.RECORDING_RECEIVED);
    }

    public void recordingUnusable(Tables tables, Source source, OrderRow row) {
        move(tables, source, row, OrderEvent.RECORDING_UNUSABLE);
    }

    public void resultComputed(Tables tables, Source source, OrderRow row) {
        move(tables, source, row, OrderEvent.RESULT_COMPUTED);
    }

    /** An event the order refuses leaves it where it is: it was cancelled or ended meanwhile. */
    private void move(Tables tables, Source source, OrderRow row, OrderEvent event) {
        var known = new Known(tables, source.at());
        orders.move(known, source, row, event);
        known.store();
    }
}
