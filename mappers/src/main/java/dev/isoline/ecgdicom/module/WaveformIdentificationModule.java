package dev.isoline.ecgdicom.module;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;

/** Waveform Identification Module, PS3.3 C.10.8. */
public final class WaveformIdentificationModule {

    private WaveformIdentificationModule() {}

    public static DataSet of(WaveformObject object) {
        return new ModuleWriter("Waveform Identification (PS3.3 C.10.8)")
                .type1(Tag.InstanceNumber, object.number())
                .type1(Tag.ContentDate, DicomTime.date(object.begins()))
                .type1(Tag.ContentTime, DicomTime.time(object.begins()))
                .type1(Tag.AcquisitionDateTime, DicomTime.dateTime(object.begins()))
                .dataSet();
    }
}
