package dev.isoline.ecgdicom.module;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;

/** SC Equipment Module, PS3.3 C.8.6.1: made at a workstation. */
public final class ScEquipmentModule {

    private ScEquipmentModule() {}

    public static DataSet of(DocumentObject object) {
        return new ModuleWriter("SC Equipment (PS3.3 C.8.6.1)")
                .type1(Tag.ConversionType, "WSD")
                .dataSet();
    }
}
