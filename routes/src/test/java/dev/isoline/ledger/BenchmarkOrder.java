package dev.isoline.ledger;

import dev.isoline.ledger.DeliveryTable.NewDelivery;
import dev.isoline.ledger.MessageTable.NewMessage;
import dev.isoline.ledger.OrderTable.OrderRow;
import dev.isoline.ledger.ResourceTable.IndexEntry;
import dev.isoline.ledger.TimelineTable.Entry;
import dev.isoline.order.OrderState;
import java.time.Instant;
import java.util.List;

/**
 * The rows of one accepted order: the message and its answer, six resources of about 1 KB with four
 * index entries each, the order, its timeline, and two deliveries. 26 statements, 40 rows.
 */
record BenchmarkOrder(String number) {

    private static final byte[] RAW = "x".repeat(900).getBytes();
    private static final String JSON = "{\"x\":\"" + "x".repeat(1000) + "\"}";
    private static final List<String> TYPES =
            List.of(
                    "Patient",
                    "Coverage",
                    "Practitioner",
                    "Organization",
                    "Condition",
                    "ServiceRequest");

    long store(Tables tables) {
        Instant now = Instant.now();
        tables.messages().accepted("mllp", "A|B", number);
        long id =
                tables.messages()
                        .insert(new NewMessage("mllp", "A|B", number, "ORM^O01", "ab", RAW, now));
        TYPES.forEach(type -> tables.resources().put(type, number, JSON, index(), now));
        tables.orders()
                .insert(
                        new OrderRow(
                                number,
                                "clinic",
                                "urn:a",
                                number,
                                "F" + number,
                                "A" + number,
                                number,
                                OrderState.ACCEPTED,
                                List.of(),
                                null,
                                now));
        tables.timeline().add(new Entry(number, now, "received", "A|B", "ORM^O01"));
        tables.timeline().add(new Entry(number, now, "accepted", "gateway", ""));
        tables.deliveries().add(delivery("tern-street", "order", now));
        tables.deliveries().add(delivery("harrow-bay", "status", now));
        tables.messages().answered(id, RAW, "AA");
        return id;
    }

    private List<IndexEntry> index() {
        return List.of(
                new IndexEntry("identifier", "urn:oid:2.999.1", number),
                new IndexEntry("subject", "Patient", number),
                new IndexEntry("status", "", "active"),
                new IndexEntry("code", "http://loinc.org", "18754-2"));
    }

    private NewDelivery delivery(String destination, String kind, Instant now) {
        return new NewDelivery(destination, number, kind, "application/fhir+json", RAW, null, now);
    }
}
