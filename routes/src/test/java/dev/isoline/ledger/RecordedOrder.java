package dev.isoline.ledger;

import dev.isoline.ledger.DeliveryTable.NewDelivery;
import dev.isoline.ledger.MessageTable.NewMessage;
import dev.isoline.ledger.MessageTable.StoredMessage;
import dev.isoline.ledger.OrderTable.OrderRow;
import dev.isoline.ledger.ResourceTable.IndexEntry;
import dev.isoline.ledger.ResourceTable.StoredResource;
import dev.isoline.ledger.TimelineTable.Entry;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * The rows a gateway wrote for its first order, in the order it wrote them, to be written again
 * under other keys.
 *
 * @param index index entries of each resource by {@code Type/id}
 */
record RecordedOrder(
        StoredMessage message,
        List<StoredResource> resources,
        Map<String, List<IndexEntry>> index,
        OrderRow order,
        List<Entry> timeline,
        List<NewDelivery> deliveries) {

    /** Reads beside the gateway, which goes on running. */
    static RecordedOrder in(Path data) throws SQLException {
        String url = "jdbc:sqlite:" + data.resolve(SqliteStore.FILE);
        try (var session = new Session(DriverManager.getConnection(url))) {
            var tables = new Tables(session);
            String id =
                    session.first(row -> row.getString(1), "SELECT id FROM orders").orElseThrow();
            return new RecordedOrder(
                    tables.messages().byId(1).orElseThrow(),
                    resources(session),
                    index(session),
                    tables.orders().byId(id).orElseThrow(),
                    tables.timeline().of(id),
                    tables.deliveries().ofOrder(id).stream().map(row -> row.delivery()).toList());
        }
    }

    private static List<StoredResource> resources(Session session) {
        return session.list(
                row ->
                        new StoredResource(
                                row.getString(1),
                                row.getString(2),
                                row.getInt(3),
                                Session.instant(row, 4),
                                row.getString(5)),
                "SELECT type, id, version, updated, json FROM resource ORDER BY rowid");
    }

    private static Map<String, List<IndexEntry>> index(Session session) {
        return session
                .list(
                        row ->
                                Map.entry(
                                        row.getString(1) + "/" + row.getString(2),
                                        new IndexEntry(
                                                row.getString(3),
                                                row.getString(4),
                                                row.getString(5))),
                        "SELECT type, id, param, system, value FROM resource_index ORDER BY rowid")
                .stream()
                .collect(
                        Collectors.groupingBy(
                                Map.Entry::getKey,
                                Collectors.mapping(Map.Entry::getValue, Collectors.toList())));
    }

    int rows() {
        int indexed =
                resources.stream().mapToInt(r -> index.get(r.type() + "/" + r.id()).size()).sum();
        return 2 + resources.size() + indexed + timeline.size() + deliveries.size();
    }

    /**
     * The same rows under keys that end in {@code key}: one accepted message with all it caused.
     */
    long store(Tables tables, String key) {
        NewMessage raw = message.message();
        tables.messages().accepted(raw.channel(), raw.sender(), key);
        long id =
                tables.messages()
                        .insert(
                                new NewMessage(
                                        raw.channel(),
                                        raw.sender(),
                                        key,
                                        raw.type(),
                                        raw.sha256(),
                                        raw.raw(),
                                        raw.receivedAt()));
        resources.forEach(resource -> put(tables, resource, key));
        orders(tables, key);
        deliveries.forEach(delivery -> tables.deliveries().add(keyed(delivery, key)));
        tables.messages().answered(id, message.answer(), message.outcome());
        return id;
    }

    private void put(Tables tables, StoredResource resource, String key) {
        var entries =
                index.get(resource.type() + "/" + resource.id()).stream()
                        .map(e -> new IndexEntry(e.param(), e.system(), e.value() + key))
                        .toList();
        String id = resource.id() + key;
        tables.resources().put(resource.type(), id, resource.json(), entries, resource.updated());
    }

    /** The row is written once and updated at every line of the timeline. */
    private void orders(Tables tables, String key) {
        var row =
                new OrderRow(
                        order.id() + key,
                        order.sender(),
                        order.placerSystem(),
                        order.placer() + key,
                        order.filler() + key,
                        order.accession() + key,
                        order.patientId() + key,
                        order.state(),
                        order.reasons(),
                        order.dueAt(),
                        order.updatedAt());
        tables.orders().insert(row);
        for (Entry e : timeline) {
            tables.orders().update(row);
            tables.timeline().add(new Entry(row.id(), e.at(), e.event(), e.actor(), e.detail()));
        }
    }

    private static NewDelivery keyed(NewDelivery d, String key) {
        return new NewDelivery(
                d.destination(),
                d.orderId() + key,
                d.kind(),
                d.contentType(),
                d.payload(),
                d.path(),
                d.at());
    }
}
