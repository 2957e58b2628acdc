package dev.isoline.worklist;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;
import dev.isoline.fhirdicom.ServiceRequestToWorklistItem;
import dev.isoline.fhirdicom.Station;
import dev.isoline.ledger.Tables;
import dev.isoline.ledger.TimelineTable;
import dev.isoline.ledger.WorklistTable.Entry;
import dev.isoline.order.ContentError;
import dev.isoline.order.OrderState;
import dev.isoline.resources.OrderResources;
import dev.isoline.settings.Senders;
import dev.isoline.settings.WorklistProperties;
import dev.isoline.settings.WorklistProperties.StationSettings;
import java.time.Instant;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.springframework.stereotype.Component;

/** The entries of the worklist, kept in the unit of work that changes what they are made of. */
@Component
public class WorklistEntries {

    /** Waiting for a recorder: for the first time, or again since its recording was of no use. */
    private static final Set<OrderState> OFFERED = EnumSet.of(OrderState.READY, OrderState.FAILED);

    /** Event of an order's timeline: it should be on the worklist and cannot. */
    static final String NOT_OFFERED = "NOT_ON_WORKLIST";

    private final Senders senders;
    private final WorklistProperties properties;

    public WorklistEntries(Senders senders, WorklistProperties properties) {
        this.senders = senders;
        this.properties = properties;
    }

    /** Whether orders in this state are offered to recorder stations. */
    public static boolean offers(OrderState state) {
        return OFFERED.contains(state);
    }

    /** Offers an order as it is now; where DICOM cannot carry it, its timeline says why. */
    public void offer(Tables tables, OrderResources order, Instant at) {
        String id = order.row().id();
        try {
            tables.worklist().put(entry(id, item(order, at)));
        } catch (ContentError e) {
            withdraw(tables, id);
            tables.timeline().add(notOffered(id, e, at));
        }
    }

    public void withdraw(Tables tables, String orderId) {
        tables.worklist().remove(orderId);
    }

    private DataSet item(OrderResources order, Instant at) {
        String sender = order.row().sender();
        return ServiceRequestToWorklistItem.map(
                order.serviceRequest(),
                order.patient(),
                order.resolve(),
                station(sender),
                senders.byName(sender).zone(),
                at);
    }

    private Station station(String sender) {
        return Optional.ofNullable(properties.stations().get(sender))
                .or(() -> Optional.ofNullable(properties.stations().get(Senders.DEFAULT)))
                .map(WorklistEntries::station)
                .orElse(Station.ANY);
    }

    private static Station station(StationSettings settings) {
        return new Station(settings.aeTitle(), settings.name(), settings.location());
    }

    /** The row of an item: what queries usually ask for beside the item itself. */
    static Entry entry(String orderId, DataSet item) {
        DataSet step = StoredItem.step(item);
        return new Entry(
                orderId,
                StartNumber.of(StartPeriod.start(step)),
                NameForm.of(StoredItem.text(Tag.PatientName, item)),
                StoredItem.text(Tag.PatientID, item),
                StoredItem.text(Tag.AccessionNumber, item),
                StoredItem.text(Tag.ScheduledStationAETitle, step),
                StoredItem.encode(item));
    }

    private static TimelineTable.Entry notOffered(String orderId, ContentError e, Instant at) {
        var problem = e.problems().get(0);
        return new TimelineTable.Entry(orderId, at, NOT_OFFERED, "worklist", problem.location());
    }
}
