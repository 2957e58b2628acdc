package dev.isoline.delivery;

import dev.isoline.attach.ForwardBundle;
import dev.isoline.attach.StatusBundle;
import dev.isoline.ledger.DeliveryTable.NewDelivery;
import dev.isoline.ledger.Tables;
import dev.isoline.resources.FhirJson;
import dev.isoline.resources.OrderResources;
import dev.isoline.settings.IsolineProperties;
import dev.isoline.settings.IsolineProperties.Destination;
import dev.isoline.settings.Senders;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
import org.hl7.fhir.r4.model.Bundle;
import org.springframework.stereotype.Component;

/**
 * Who gets what. Written in the unit of work that made it due; what a delivery sends, control id
 * included, is fixed here, so that every attempt sends the same.
 */
@Component
public class Outbox {

    private static final String FHIR_JSON = "application/fhir+json";
    private static final String ER7 = "application/edi-hl7v2";
    private static final String DICOM = "application/dicom";

    private final IsolineProperties properties;
    private final Senders senders;
    private final OutboundMessages messages;

    public Outbox(IsolineProperties properties, Senders senders, OutboundMessages messages) {
        this.properties = properties;
        this.senders = senders;
        this.messages = messages;
    }

    /** A complete order, to the monitoring service; its clinic learns where it stands. */
    public void order(Tables tables, OrderResources order, Instant at) {
        var lane = new Lane(tables, order.row().id(), at);
        for (String name : receiving("orders").keySet()) {
            var bundle =
                    ForwardBundle.of(
                            order.serviceRequest(),
                            order.row().state(),
                            order.task(),
                            order.resolve());
            lane.add(name, "order", bundle);
        }
        ofSender(order, "status").forEach((name, to) -> status(lane, order, name, to));
    }

    /** Where an order stands, to its clinic and to everyone who got the order. */
    public void status(Tables tables, OrderResources order, Instant at) {
        var lane = new Lane(tables, order.row().id(), at);
        BiConsumer<String, Destination> tell = (name, to) -> status(lane, order, name, to);
        ofSender(order, "status").forEach(tell);
        receiving("orders").entrySet().stream()
                .filter(d -> d.getValue().receives().contains("status"))
                .filter(d -> lane.got("order", d.getKey()))
                .forEach(d -> tell.accept(d.getKey(), d.getValue()));
    }

    /**
     * A result, to the order's clinic; the objects to every archive.
     *
     * @param objects files relative to the data folder
     */
    public void result(
            Tables tables, OrderResources order, Bundle report, List<String> objects, Instant at) {
        var lane = new Lane(tables, order.row().id(), at);
        for (String archive : receiving("objects").keySet()) {
            objects.forEach(path -> lane.add(archive, path));
        }
        for (var to : ofSender(order, "results").entrySet()) {
            if (to.getValue().kind().equals("mllp")) {
                String name = to.getKey();
                lane.add(name, "oru", messages.result(name, to.getValue(), order, report, at));
            } else {
                lane.add(to.getKey(), "report", report);
            }
        }
    }

    private void status(Lane lane, OrderResources order, String name, Destination to) {
        if (to.kind().equals("fhir")) {
            lane.add(
                    name,
                    "status",
                    StatusBundle.of(order.task(), order.serviceRequest(), order.patient()));
        } else if (to.kind().equals("mllp")) {
            messages.status(name, to, order, lane.at())
                    .ifPresent(message -> lane.add(name, "status", message));
        }
    }

    private Map<String, Destination> receiving(String what) {
        var receiving = new LinkedHashMap<String, Destination>();
        properties.destinations().entrySet().stream()
                .filter(d -> d.getValue().receives().contains(what))
                .forEach(d -> receiving.put(d.getKey(), d.getValue()));
        return receiving;
    }

    private Map<String, Destination> ofSender(OrderResources order, String what) {
        var receiving = receiving(what);
        receiving.keySet().retainAll(senders.byName(order.row().sender()).destinations());
        return receiving;
    }

    /** The lanes of one order at one moment. */
    private record Lane(Tables tables, String orderId, Instant at) {

        void add(String destination, String kind, Bundle bundle) {
            byte[] json = FhirJson.encode(bundle).getBytes(StandardCharsets.UTF_8);
            add(destination, kind, FHIR_JSON, json, null);
        }

        void add(String destination, String kind, byte[] message) {
            add(destination, kind, ER7, message, null);
        }

        void add(String destination, String path) {
            add(destination, "object", DICOM, null, path);
        }

        boolean got(String kind, String destination) {
            return tables.deliveries().ofOrder(orderId).stream()
                    .map(row -> row.delivery())
                    .anyMatch(d -> d.destination().equals(destination) && d.kind().equals(kind));
        }

        private void add(String to, String kind, String type, byte[] payload, String path) {
            tables.deliveries().add(new NewDelivery(to, orderId, kind, type, payload, path, at));
        }
    }
}
