package dev.isoline.fhirdicom;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;
import dev.isoline.ecgdicom.OrderContext.Code;
import dev.isoline.ecgdicom.module.CodeItems;
import dev.isoline.ecgdicom.module.ModuleWriter;
import java.util.List;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Annotation;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestPriority;

/** Requested Procedure Module, PS3.3 C.4.11: one an order. */
final class RequestedProcedureModule {

    private RequestedProcedureModule() {}

    static DataSet of(OrderedProcedure ordered) {
        var context = ordered.context();
        return new ModuleWriter("Requested Procedure (PS3.3 C.4.11)")
                .type1(Tag.RequestedProcedureID, context.requestedProcedureId())
                .type1(Tag.RequestedProcedureDescription, description(context.procedure()))
                .type3(Tag.RequestedProcedureCodeSequence, CodeItems.code(context.procedure()))
                .type1(Tag.StudyInstanceUID, context.studyUid())
                .type2(Tag.ReferencedStudySequence, List.of())
                .type2(Tag.RequestedProcedurePriority, priority(ordered.order()))
                .type2(Tag.PatientTransportArrangements, "")
                .type3(Tag.ReasonForTheRequestedProcedure, reason(ordered))
                .type3(Tag.ReasonForRequestedProcedureCodeSequence, reasonCodes(ordered))
                .type3(Tag.RequestedProcedureComments, comments(ordered.order()))
                .dataSet();
    }

    /** Type 1C: this or the code has to be there; this always is. */
    static String description(Code procedure) {
        return procedure.meaning().isEmpty()
                ? ScheduledProcedureStepModule.AMBULATORY_ECG
                : procedure.meaning();
    }

    /** Defined Terms STAT, HIGH, ROUTINE, MEDIUM, LOW of (0040,1003). */
    private static String priority(ServiceRequest order) {
        ServiceRequestPriority priority = order.getPriority();
        if (priority == null) {
            return "";
        }
        return switch (priority) {
            case STAT -> "STAT";
            case ASAP, URGENT -> "HIGH";
            case ROUTINE -> "ROUTINE";
            default -> "";
        };
    }

    private static String reason(OrderedProcedure ordered) {
        var words = ordered.reasons().stream().map(CodeableConceptToCode::words);
        return DescriptiveText.cut(DescriptiveText.joined(words, "; "), DescriptiveText.LO);
    }

    private static List<DataSet> reasonCodes(OrderedProcedure ordered) {
        return ordered.reasons().stream()
                .map(CodeableConceptToCode::map)
                .flatMap(code -> CodeItems.code(code).stream())
                .toList();
    }

    private static String comments(ServiceRequest order) {
        var words =
                Stream.concat(
                        order.getNote().stream().map(Annotation::getText),
                        Stream.of(order.getPatientInstruction()));
        return DescriptiveText.cut(DescriptiveText.joined(words, "; "), DescriptiveText.LT);
    }
}
