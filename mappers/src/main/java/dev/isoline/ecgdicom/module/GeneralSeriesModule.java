package dev.isoline.ecgdicom.module;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;
import dev.isoline.ecgdicom.OrderContext;
import java.util.List;

/** General Series Module, PS3.3 C.7.3.1: one series for all objects of a recording. */
public final class GeneralSeriesModule {

    private GeneralSeriesModule() {}

    public static DataSet of(WaveformObject object) {
        var series = object.series();
        return new ModuleWriter("General Series (PS3.3 C.7.3.1)")
                .type1(Tag.Modality, "ECG")
                .type1(Tag.SeriesInstanceUID, series.uid())
                .type2(Tag.SeriesNumber, 1)
                .type3(Tag.SeriesDate, DicomTime.date(series.start()))
                .type3(Tag.SeriesTime, DicomTime.time(series.start()))
                .type3(Tag.RequestAttributesSequence, request(object.order()))
                .dataSet();
    }

    /** Request Attributes macro, PS3.3 table 10-9. */
    private static List<DataSet> request(OrderContext order) {
        if (order.requestedProcedureId().isEmpty()) {
            return List.of();
        }
        return List.of(
                new ModuleWriter("Request Attributes (PS3.3 10.6)")
                        .type1(Tag.RequestedProcedureID, order.requestedProcedureId())
                        .type3(Tag.RequestedProcedureDescription, order.procedure().meaning())
                        .type3(
                                Tag.RequestedProcedureCodeSequence,
                                CodeItems.code(order.procedure()))
                        .dataSet());
    }
}
