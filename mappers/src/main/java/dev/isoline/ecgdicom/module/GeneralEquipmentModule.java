package dev.isoline.ecgdicom.module;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;

/** General Equipment Module, PS3.3 C.7.5.1: the recorder, as far as its file names it. */
public final class GeneralEquipmentModule {

    private static final int LONGEST_LO = 64;

    private GeneralEquipmentModule() {}

    public static DataSet of(CompositeObject object) {
        String equipment = object.equipment();
        return new ModuleWriter("General Equipment (PS3.3 C.7.5.1)")
                .type2(Tag.Manufacturer, "")
                .type3(Tag.ManufacturerModelName, Labels.cut(equipment, LONGEST_LO))
                .dataSet();
    }
}
