package dev.isoline.ledger;

import dev.isoline.ledger.DeliveryTable.NewDelivery;
import dev.isoline.ledger.MessageTable.NewMessage;
import dev.isoline.ledger.MessageTable.StoredMessage;
import dev.isoline.ledger.OrderTable.OrderRow;
import dev.isoline.ledger.ResourceTable.IndexEntry;
import dev.isoline.ledger.ResourceTable.StoredResource;
import dev.isoline.ledger.TimelineTable.Entry;
import dev.isoline.order.StableId;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.List;
import java.util.Locale;

/**
 * The rows a gateway wrote for its newest order, to be written again under other keys: keys that
 * are random there are random here, numbers that grow there grow here, and what is the same for all
 * orders stays the same.
 */
record RecordedOrder(
        StoredMessage message,
        List<Indexed> resources,
        OrderRow order,
        List<Entry> timeline,
        List<NewDelivery> deliveries) {

    /** A resource and what it is found by. */
    record Indexed(StoredResource resource, List<IndexEntry> index) {}

    /** Reads beside the gateway, which goes on running. */
    static RecordedOrder in(Path data) throws SQLException {
        String url = "jdbc:sqlite:" + data.resolve(SqliteStore.FILE);
        try (var session = new Session(DriverManager.getConnection(url))) {
            var tables = new Tables(session);
            String id =
                    session.first(
                                    row -> row.getString(1),
                                    "SELECT id FROM orders ORDER BY num DESC LIMIT 1")
                            .orElseThrow();
            long message = session.number("SELECT MAX(id) FROM message");
            var order = tables.orders().byId(id).orElseThrow();
            return new RecordedOrder(
                    tables.messages().byId(message).orElseThrow(),
                    resources(session, order),
                    order,
                    tables.timeline().of(id),
                    tables.deliveries().ofOrder(id).stream().map(row -> row.delivery()).toList());
        }
    }

    /** Of the order's unit of work: they have its time. */
    private static List<Indexed> resources(Session session, OrderRow order) {
        return session.list(
                row ->
                        new Indexed(
                                new StoredResource(
                                        row.getString(1),
                                        row.getString(2),
                                        row.getInt(3),
                                        Session.instant(row, 4),
                                        row.getString(5)),
                                index(row.getString(1), row.getString(6))),
                "SELECT type, id, version, updated, json, entries FROM resource"
                        + " WHERE updated = ? ORDER BY num",
                order.updatedAt());
    }

    private static List<IndexEntry> index(String type, String entries) {
        return Keys.read(entries).stream()
                .map(
                        key ->
                                new IndexEntry(
                                        key.param().substring(type.length() + 1),
                                        key.system(),
                                        key.value()))
                .toList();
    }

    int rows() {
        int indexed = resources.stream().mapToInt(r -> r.index().size()).sum();
        return 1 + resources.size() + indexed + 4 + timeline.size() + 2 * deliveries.size();
    }

    /** The same rows for another order: one accepted message with all it caused. */
    long store(Tables tables, int number) {
        NewMessage raw = message.message();
        String controlId = keyed(raw.controlId(), number);
        tables.messages().accepted(raw.channel(), raw.sender(), controlId);
        long id =
                tables.messages()
                        .insert(
                                new NewMessage(
                                        raw.channel(),
                                        raw.sender(),
                                        controlId,
                                        raw.type(),
                                        raw.sha256(),
                                        raw.raw(),
                                        raw.receivedAt()));
        orders(tables, number);
        deliveries.forEach(delivery -> tables.deliveries().add(keyed(delivery, number)));
        resources.forEach(resource -> put(tables, resource, number));
        tables.messages().answered(id, message.answer(), message.outcome());
        return id;
    }

    private void put(Tables tables, Indexed indexed, int number) {
        var entries =
                indexed.index().stream()
                        .map(e -> new IndexEntry(e.param(), e.system(), keyed(e.value(), number)))
                        .toList();
        var resource = indexed.resource();
        tables.resources()
                .add(
                        resource.type(),
                        keyed(resource.id(), number),
                        resource.json(),
                        entries,
                        resource.updated());
    }

    private void orders(Tables tables, int number) {
        var row =
                new OrderRow(
                        keyed(order.id(), number),
                        order.sender(),
                        order.placerSystem(),
                        keyed(order.placer(), number),
                        keyed(order.filler(), number),
                        keyed(order.accession(), number),
                        keyed(order.patientId(), number),
                        order.state(),
                        order.reasons(),
                        order.dueAt(),
                        order.updatedAt());
        tables.orders().insert(row);
        for (Entry e : timeline) {
            tables.timeline().add(new Entry(row.id(), e.at(), e.event(), e.actor(), e.detail()));
        }
    }

    private NewDelivery keyed(NewDelivery d, int number) {
        return new NewDelivery(
                d.destination(),
                keyed(d.orderId(), number),
                d.kind(),
                d.contentType(),
                d.payload(),
                d.path(),
                d.at());
    }

    /** Ids and the numbers derived from them are random; placer, patient and message count up. */
    private String keyed(String value, int number) {
        if (value.matches("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}")) {
            return StableId.of(value, "" + number);
        }
        if (value.equals(order.filler()) || value.equals(order.accession())) {
            String digits = StableId.of(order.filler(), "" + number).replace("-", "");
            return value.charAt(0) + digits.substring(0, 13).toUpperCase(Locale.ROOT);
        }
        String own = message.message().controlId().substring(1);
        return value.endsWith(own)
                ? value.substring(0, value.length() - own.length()) + number
                : value;
    }
}
