package dev.isoline.recordings;

import dev.isoline.delivery.Outbox;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingHeader;
import dev.isoline.ecg.analysis.Analysis;
import dev.isoline.ecg.analysis.Findings;
import dev.isoline.ecg.dicom.DicomRecording;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecgdicom.OrderContext;
import dev.isoline.ecgdicom.StripSettings;
import dev.isoline.ecgfhir.ReportBundle;
import dev.isoline.ecgfhir.ReportContext;
import dev.isoline.fhir.BundleResources;
import dev.isoline.fhirdicom.ServiceRequestToOrderContext;
import dev.isoline.intake.OrderDesk;
import dev.isoline.intake.Source;
import dev.isoline.ledger.Ledger;
import dev.isoline.ledger.OrderTable.OrderRow;
import dev.isoline.ledger.RecordingTable.RecordingRow;
import dev.isoline.ledger.RecordingTable.State;
import dev.isoline.ledger.Tables;
import dev.isoline.resources.OrderResources;
import dev.isoline.resources.ResourceStore;
import dev.isoline.settings.Senders;
import java.io.IOException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Encounter;
import org.hl7.fhir.r4.model.Practitioner;
import org.hl7.fhir.r4.model.Resource;
import org.springframework.stereotype.Component;

/**
 * From a recording to its result, flow 4: measured, written as annotated DICOM objects and as a
 * FHIR report, then stored, told and put into the outbox in one unit of work. The same recording
 * makes the same result, so an attempt that a crash cut short leaves nothing to clean up.
 */
@Component
class ResultMaker {

    /** Version of the program, as the report names it. */
    private static final String SOFTWARE = "0.1.0";

    /** What a report refers to and the ledger has already. */
    private static final Set<String> KNOWN =
            Set.of("Patient", "ServiceRequest", "Practitioner", "PractitionerRole", "Organization");

    /** An order and who placed it, read at one moment. */
    private record Ordered(
            OrderResources order, List<Resource> requester, Optional<Encounter> visit) {

        Practitioner practitioner() {
            return requester.stream()
                    .filter(Practitioner.class::isInstance)
                    .map(Practitioner.class::cast)
                    .findFirst()
                    .orElse(null);
        }
    }

    private final Ledger ledger;
    private final RecordingStore store;
    private final OrderDesk orders;
    private final Outbox outbox;
    private final Senders senders;
    private final AnalysisSettings settings;
    private final StripSettings strips;
    private final Clock clock;

    ResultMaker(
            Ledger ledger,
            RecordingStore store,
            OrderDesk orders,
            Outbox outbox,
            Senders senders,
            AnalysisSettings settings,
            StripSettings strips,
            Clock clock) {
        this.ledger = ledger;
        this.store = store;
        this.orders = orders;
        this.outbox = outbox;
        this.senders = senders;
        this.settings = settings;
        this.strips = strips;
        this.clock = clock;
    }

    /**
     * @throws IOException when the recording cannot be read or written
     */
    void make(RecordingRow row) throws IOException {
        Ordered ordered = ledger.read(tables -> ordered(tables, row));
        ZoneId zone = zone(row, senders.byName(ordered.order().row().sender()).zone());
        Findings findings = findings(row);
        OrderContext order =
                ServiceRequestToOrderContext.map(
                        ordered.order().serviceRequest(),
                        ordered.order().patient(),
                        ordered.practitioner(),
                        ordered.visit().orElse(null));
        var objects = new RecordingObjects(store, row, zone).write(order, findings, strips);
        Bundle report =
                ReportBundle.of(
                        context(row, ordered, zone), findings.summary(), objects.waveforms());
        ledger.write(tables -> publish(tables, row, report, objects.paths())).join();
    }

    /** A DICOM object may say in which offset its times are; else they are the clinic's. */
    private ZoneId zone(RecordingRow row, ZoneId clinic) throws IOException {
        try (Recording recording = open(row)) {
            return recording instanceof DicomRecording object && object.offset().isPresent()
                    ? object.offset().get()
                    : clinic;
        }
    }

    /** The recording is in, but nothing can be made of it. */
    void unusable(RecordingRow row, String problem) {
        ledger.write(
                        tables -> {
                            tables.recordings().update(row.with(State.FAILED, problem));
                            orders.recordingUnusable(tables, source(row), orderRow(tables, row));
                            return null;
                        })
                .join();
    }

    private Void publish(Tables tables, RecordingRow row, Bundle report, List<String> objects) {
        Instant at = clock.instant();
        BundleResources.of(report).stream()
                .filter(resource -> !KNOWN.contains(resource.fhirType()))
                .forEach(resource -> ResourceStore.put(tables, resource, at));
        tables.recordings().update(row.with(State.ANALYSED, ""));
        orders.resultComputed(tables, source(row), orderRow(tables, row));
        outbox.result(tables, order(tables, row), report, objects, at);
        return null;
    }

    private Findings findings(RecordingRow row) throws IOException {
        try (Recording recording = open(row)) {
            return Analysis.findings(recording, settings);
        }
    }

    private ReportContext context(RecordingRow row, Ordered ordered, ZoneId zone)
            throws IOException {
        RecordingHeader header;
        try (Recording recording = open(row)) {
            header = recording.header();
        }
        return new ReportContext(
                ordered.order().row().id(),
                ordered.order().serviceRequest(),
                ordered.order().patient(),
                ordered.requester(),
                KeptFile.describe(store.resolve(row.path()), row, header),
                zone,
                clock.instant(),
                SOFTWARE);
    }

    private Recording open(RecordingRow row) throws IOException {
        return store.open(row.path());
    }

    private Ordered ordered(Tables tables, RecordingRow row) {
        OrderResources order = order(tables, row);
        List<Resource> requester =
                Stream.ofNullable(order.serviceRequest().getRequester().getReference())
                        .flatMap(reference -> order.resolve().apply(reference).stream())
                        .toList();
        Optional<Encounter> visit =
                Optional.ofNullable(order.serviceRequest().getEncounter().getReference())
                        .flatMap(order.resolve())
                        .filter(Encounter.class::isInstance)
                        .map(Encounter.class::cast);
        return new Ordered(order, requester, visit);
    }

    private OrderResources order(Tables tables, RecordingRow row) {
        return orders.resources(tables, orderRow(tables, row));
    }

    private static OrderRow orderRow(Tables tables, RecordingRow row) {
        return tables.orders().byId(row.orderId()).orElseThrow();
    }

    private Source source(RecordingRow row) {
        return new Source("recording", row.sender(), 0, clock.instant());
    }
}
