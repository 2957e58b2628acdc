package dev.isoline.ecgdicom.module;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;
import java.util.List;

/** Acquisition Context Module, PS3.3 C.7.6.14: empty, for nothing is known about posture. */
public final class AcquisitionContextModule {

    private AcquisitionContextModule() {}

    public static DataSet of(WaveformObject object) {
        return new ModuleWriter("Acquisition Context (PS3.3 C.7.6.14)")
                .type2(Tag.AcquisitionContextSequence, List.of())
                .dataSet();
    }
}
