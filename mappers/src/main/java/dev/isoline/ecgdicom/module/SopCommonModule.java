package dev.isoline.ecgdicom.module;

import dev.isoline.dicom.CharacterSet;
import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;

/** SOP Common Module, PS3.3 C.12.1; no creation time, for the same input makes the same bytes. */
public final class SopCommonModule {

    private SopCommonModule() {}

    public static DataSet of(CompositeObject object) {
        return new ModuleWriter("SOP Common (PS3.3 C.12.1)")
                .type1(Tag.SpecificCharacterSet, CharacterSet.ISO_IR_192.term())
                .type1(Tag.SOPClassUID, object.sopClassUid())
                .type1(Tag.SOPInstanceUID, object.sopInstanceUid())
                .type3(Tag.TimezoneOffsetFromUTC, DicomTime.offset(object.begins()))
                .dataSet();
    }
}
