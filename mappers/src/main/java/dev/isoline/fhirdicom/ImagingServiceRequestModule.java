package dev.isoline.fhirdicom;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;
import dev.isoline.ecgdicom.module.CodeItems;
import dev.isoline.ecgdicom.module.ModuleWriter;
import java.time.ZoneId;
import org.hl7.fhir.r4.model.Encounter;
import org.hl7.fhir.r4.model.Encounter.EncounterParticipantComponent;

/** Imaging Service Request Module, PS3.3 C.4.12: the order as its placer knows it. */
final class ImagingServiceRequestModule {

    private static final String PARTICIPATION =
            "http://terminology.hl7.org/CodeSystem/v3-ParticipationType";

    private ImagingServiceRequestModule() {}

    static DataSet of(OrderedProcedure ordered, ZoneId zone) {
        var context = ordered.context();
        var authored = StepTimes.authored(ordered.order(), zone);
        return new ModuleWriter("Imaging Service Request (PS3.3 C.4.12)")
                .type2(Tag.AccessionNumber, context.accession().value())
                .type3(
                        Tag.IssuerOfAccessionNumberSequence,
                        CodeItems.authority(context.accession().authority()))
                .type2(Tag.ReferringPhysicianName, referring(ordered))
                .type2(Tag.RequestingPhysician, requesting(ordered))
                .type3(
                        Tag.RequestingService,
                        DescriptiveText.cut(ordered.requestingService(), DescriptiveText.LO))
                .type3(
                        Tag.IssueDateOfImagingServiceRequest,
                        authored.map(StepTimes::date).orElse(""))
                .type3(
                        Tag.IssueTimeOfImagingServiceRequest,
                        authored.map(StepTimes::time).orElse(""))
                .type3(Tag.PlacerOrderNumberImagingServiceRequest, context.placer().value())
                .type3(Tag.FillerOrderNumberImagingServiceRequest, context.filler().value())
                .type3(
                        Tag.OrderPlacerIdentifierSequence,
                        CodeItems.authority(context.placer().authority()))
                .type3(
                        Tag.OrderFillerIdentifierSequence,
                        CodeItems.authority(context.filler().authority()))
                .dataSet();
    }

    /** Who sent the patient (PV1-8); where the encounter does not say, who placed the order. */
    private static String referring(OrderedProcedure ordered) {
        return ordered.encounter().stream()
                .map(Encounter::getParticipant)
                .flatMap(participants -> participants.stream())
                .filter(ImagingServiceRequestModule::isReferrer)
                .flatMap(p -> ordered.practitioner(p.getIndividual()).stream())
                .map(referrer -> HumanNameToPn.map(referrer.getName(), "Practitioner.name"))
                .findFirst()
                .orElseGet(() -> requesting(ordered));
    }

    private static String requesting(OrderedProcedure ordered) {
        return ordered.context().referringPhysician();
    }

    private static boolean isReferrer(EncounterParticipantComponent participant) {
        return participant.getType().stream().anyMatch(t -> t.hasCoding(PARTICIPATION, "REF"));
    }
}
