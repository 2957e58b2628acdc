package dev.isoline.fhirdicom;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;
import dev.isoline.ecgdicom.OrderContext.Code;
import dev.isoline.ecgdicom.module.CodeItems;
import dev.isoline.ecgdicom.module.ModuleWriter;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Location;
import org.hl7.fhir.r4.model.Practitioner;

/** The one item of Scheduled Procedure Step Sequence: fitting the recorder; PS3.3 C.4.10. */
final class ScheduledProcedureStepModule {

    /** Every order here asks for one; table 0074 has no code but EC for it. */
    static final String MODALITY = "ECG";

    /** What an order that says nothing about itself is called. */
    static final String AMBULATORY_ECG = "Ambulatory ECG";

    private ScheduledProcedureStepModule() {}

    static DataSet of(OrderedProcedure ordered, Station station, StepTimes times) {
        var context = ordered.context();
        return new ModuleWriter("Scheduled Procedure Step (PS3.3 C.4.10)")
                .type2(Tag.ScheduledStationAETitle, station.aeTitle())
                .type1(Tag.ScheduledProcedureStepStartDate, StepTimes.date(times.start()))
                .type1(Tag.ScheduledProcedureStepStartTime, StepTimes.time(times.start()))
                .type3(Tag.ScheduledProcedureStepEndDate, end(times, "date"))
                .type3(Tag.ScheduledProcedureStepEndTime, end(times, "time"))
                .type1(Tag.Modality, MODALITY)
                .type2(Tag.ScheduledPerformingPhysicianName, performer(ordered))
                .type1(
                        Tag.ScheduledProcedureStepDescription,
                        description(context.procedure(), times.duration()))
                .type3(Tag.ScheduledProtocolCodeSequence, CodeItems.code(context.procedure()))
                .type1(Tag.ScheduledProcedureStepID, context.scheduledProcedureStepId())
                .type2(Tag.ScheduledStationName, cut(station.name()))
                .type2(Tag.ScheduledProcedureStepLocation, location(ordered, station))
                .type3(Tag.ScheduledProcedureStepStatus, "SCHEDULED")
                .type3(Tag.CommentsOnTheScheduledProcedureStep, comment(times))
                .dataSet();
    }

    private static String end(StepTimes times, String part) {
        return times.end()
                .map(end -> part.equals("date") ? StepTimes.date(end) : StepTimes.time(end))
                .orElse("");
    }

    private static String performer(OrderedProcedure ordered) {
        return ordered.order().getPerformer().stream()
                .flatMap(r -> ordered.practitioner(r).stream())
                .map(Practitioner::getName)
                .map(names -> HumanNameToPn.map(names, "Practitioner.name"))
                .findFirst()
                .orElse("");
    }

    /** What to record and for how long, the words cut so that the duration stays. */
    private static String description(Code procedure, String duration) {
        String words = RequestedProcedureModule.description(procedure);
        String tail = duration.isEmpty() ? "" : ", " + duration;
        return DescriptiveText.cut(words, DescriptiveText.LO - tail.length()) + tail;
    }

    private static String comment(StepTimes times) {
        return times.duration().isEmpty() ? "" : "Record for " + times.duration() + ".";
    }

    private static String location(OrderedProcedure ordered, Station station) {
        var order = ordered.order();
        return Stream.concat(
                        order.getLocationReference().stream()
                                .map(r -> ordered.find(r, Location.class).map(Location::getName))
                                .flatMap(Optional::stream),
                        order.getLocationCode().stream().map(CodeableConceptToCode::words))
                .findFirst()
                .map(ScheduledProcedureStepModule::cut)
                .orElse(cut(station.location()));
    }

    private static String cut(String text) {
        return DescriptiveText.cut(text, DescriptiveText.SH);
    }
}
