package dev.isoline.ecgdicom.module;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;

/** Encapsulated Document Series Module, PS3.3 C.24.1; the modality is that of what is reported. */
public final class EncapsulatedDocumentSeriesModule {

    private EncapsulatedDocumentSeriesModule() {}

    public static DataSet of(DocumentObject object) {
        var series = object.series();
        return new ModuleWriter("Encapsulated Document Series (PS3.3 C.24.1)")
                .type1(Tag.Modality, "ECG")
                .type1(Tag.SeriesInstanceUID, series.uid())
                .type1(Tag.SeriesNumber, series.number())
                .type3(Tag.SeriesDescription, series.description())
                .type3(Tag.RequestAttributesSequence, RequestAttributes.of(object.order()))
                .dataSet();
    }
}
