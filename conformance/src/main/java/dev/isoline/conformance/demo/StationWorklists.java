package dev.isoline.conformance.demo;

import dev.isoline.conformance.partner.WorklistStation;
import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.json.BulkDataNames;
import dev.isoline.dicom.json.DicomJsonWriter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The clinics' recorder stations ask for their worklist; what they are offered needs no typing. */
final class StationWorklists {

    /** AE title of the gateway's worklist. */
    static final String CALLED = "ISOLINE";

    private final Stage stage;
    private final Story story;

    StationWorklists(Stage stage, Story story) {
        this.stage = stage;
        this.story = story;
    }

    /**
     * The order is offered to its station, with the values its clinic wrote.
     *
     * @param as what the answer is written as
     * @return the item; empty when there is none
     */
    Optional<DataSet> offered(OrderedStep ordered, String as) throws IOException {
        List<DataSet> items = ask(ordered, as);
        story.expect(
                items.size() == 1,
                "the worklist of %s has %d items instead of the one of %s",
                ordered.station(),
                items.size(),
                ordered.placer());
        if (items.size() != 1) {
            return Optional.empty();
        }
        int same = compare(ordered, items.get(0));
        story.tell(
                "The recorder station %s is offered %s by its worklist (C-FIND):"
                        + " %d values as the clinic wrote them, nothing to be typed.",
                ordered.station(), ordered.placer(), same);
        return Optional.of(items.get(0));
    }

    /** The order is not offered. */
    void notOffered(OrderedStep ordered, String as, String why) throws IOException {
        int items = ask(ordered, as).size();
        story.tell(
                "The recorder station %s is offered %s: %s is %s.",
                ordered.station(),
                items == 0 ? "nothing" : items + " items",
                ordered.placer(),
                why);
        story.expect(items == 0, "%s is on the worklist although it is %s", ordered.placer(), why);
    }

    private List<DataSet> ask(OrderedStep ordered, String as) throws IOException {
        var station = new WorklistStation(ordered.station(), CALLED, stage.dicomPort());
        List<DataSet> items = station.find(keys(ordered));
        var json = new ByteArrayOutputStream();
        new DicomJsonWriter(json, BulkDataNames.NONE).write(items);
        stage.folder().write("worklist/" + as + ".json", json.toByteArray());
        return items;
    }

    /** The broad query of IHE RAD-5: station and modality; everything else is to be returned. */
    private static DataSet keys(OrderedStep ordered) throws IOException {
        var step = new DataSet();
        var keys = new DataSet();
        for (int tag : ordered.values().keySet()) {
            (isOfStep(tag) ? step : keys).putEmpty(tag);
        }
        step.putText(Tag.ScheduledStationAETitle, ordered.station())
                .putText(Tag.Modality, "ECG")
                .putEmpty(Tag.ScheduledProcedureStepID);
        return keys.putEmpty(Tag.AccessionNumber)
                .putEmpty(Tag.StudyInstanceUID)
                .putEmpty(Tag.RequestedProcedureID)
                .putEmpty(Tag.MedicalAlerts)
                .putEmpty(Tag.SpecialNeeds)
                .putItems(Tag.ScheduledProcedureStepSequence, List.of(step));
    }

    /** Scheduled Procedure Step Module, PS3.3 C.4.10. */
    private static boolean isOfStep(int tag) {
        return tag == Tag.Modality || tag >>> 16 == 0x0040 && (tag & 0xFFFF) < 0x1000;
    }

    private int compare(OrderedStep ordered, DataSet item) throws IOException {
        int same = 0;
        DataSet step = item.item(Tag.ScheduledProcedureStepSequence).orElseGet(DataSet::new);
        for (Map.Entry<Integer, String> value : ordered.values().entrySet()) {
            int tag = value.getKey();
            String offered = (isOfStep(tag) ? step : item).text(tag).orElse("");
            story.expect(
                    offered.equals(value.getValue()),
                    "the worklist item of %s has another (%04X,%04X) than the order",
                    ordered.placer(),
                    tag >>> 16,
                    tag & 0xFFFF);
            same += offered.equals(value.getValue()) ? 1 : 0;
        }
        return same;
    }
}
