package dev.isoline.ecgdicom.module;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;
import dev.isoline.ecgdicom.OrderContext;
import java.util.List;

/** Request Attributes macro, PS3.3 table 10-9: which order a series was made for. */
final class RequestAttributes {

    private RequestAttributes() {}

    static List<DataSet> of(OrderContext order) {
        boolean requested = !order.requestedProcedureId().isEmpty();
        boolean scheduled = !order.scheduledProcedureStepId().isEmpty();
        if (!requested && !scheduled) {
            return List.of();
        }
        return List.of(
                new ModuleWriter("Request Attributes (PS3.3 10.6)")
                        .type1C(requested, Tag.RequestedProcedureID, order.requestedProcedureId())
                        .type3(Tag.AccessionNumber, order.accession().value())
                        .type3(
                                Tag.IssuerOfAccessionNumberSequence,
                                CodeItems.issuer(order.accession()))
                        .type3(Tag.StudyInstanceUID, order.studyUid())
                        .type3(Tag.RequestedProcedureDescription, order.procedure().meaning())
                        .type3(
                                Tag.RequestedProcedureCodeSequence,
                                CodeItems.code(order.procedure()))
                        .type1C(
                                scheduled,
                                Tag.ScheduledProcedureStepID,
                                order.scheduledProcedureStepId())
                        .dataSet());
    }
}
