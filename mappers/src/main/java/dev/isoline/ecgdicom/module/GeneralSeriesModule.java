package dev.isoline.ecgdicom.module;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;

/** General Series Module, PS3.3 C.7.3.1. */
public final class GeneralSeriesModule {

    private GeneralSeriesModule() {}

    public static DataSet of(CompositeObject object) {
        var series = object.series();
        return new ModuleWriter("General Series (PS3.3 C.7.3.1)")
                .type1(Tag.Modality, "ECG")
                .type1(Tag.SeriesInstanceUID, series.uid())
                .type2(Tag.SeriesNumber, series.number())
                .type3(Tag.SeriesDate, DicomTime.date(series.start()))
                .type3(Tag.SeriesTime, DicomTime.time(series.start()))
                .type3(Tag.SeriesDescription, series.description())
                .type3(Tag.RequestAttributesSequence, RequestAttributes.of(object.order()))
                .dataSet();
    }
}
