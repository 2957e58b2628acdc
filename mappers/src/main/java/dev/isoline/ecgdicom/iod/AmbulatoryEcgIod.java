package dev.isoline.ecgdicom.iod;

import dev.isoline.dicom.DataSet;
import dev.isoline.ecg.Block;
import dev.isoline.ecg.Recording;
import dev.isoline.ecgdicom.ObjectSink;
import dev.isoline.ecgdicom.OrderContext;
import dev.isoline.ecgdicom.RecordingContext;
import dev.isoline.ecgdicom.WrittenObject;
import dev.isoline.ecgdicom.module.AcquisitionContextModule;
import dev.isoline.ecgdicom.module.GeneralEquipmentModule;
import dev.isoline.ecgdicom.module.GeneralSeriesModule;
import dev.isoline.ecgdicom.module.GeneralStudyModule;
import dev.isoline.ecgdicom.module.PatientModule;
import dev.isoline.ecgdicom.module.RequestedOrderModule;
import dev.isoline.ecgdicom.module.SopCommonModule;
import dev.isoline.ecgdicom.module.WaveformIdentificationModule;
import dev.isoline.ecgdicom.module.WaveformModule;
import dev.isoline.ecgdicom.module.WaveformObject;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Ambulatory ECG IOD, PS3.3 A.34.5: a recording as one object per gap-free block of at most 24 h,
 * all in one series.
 *
 * <p>Written in one pass: how long a block is shows only at its end, so its object begins with a
 * head that announces no samples, the samples follow as they are read, and the head is written over
 * with the true counts at last. It takes the same number of bytes then, for counts and lengths have
 * a fixed width. The price is a target that can be positioned; what is saved is a second reading of
 * the recording, or a spool as large as it.
 */
public final class AmbulatoryEcgIod {

    public static final String SOP_CLASS_UID = "1.2.840.10008.5.1.4.1.1.9.1.3";

    private enum Usage {
        MANDATORY,
        CONDITIONAL,
        USER_OPTION
    }

    private record Module(Usage usage, Function<WaveformObject, DataSet> writer) {}

    /**
     * PS3.3 table A.34.5-1. Not written: Clinical Trial modules (U), Patient Study (U),
     * Synchronization (U), Waveform Annotation (C: if annotation is present; there is none).
     * Acquisition Context is U, but dciodvfy 20220618 asks for it.
     */
    private static final List<Module> MODULES =
            List.of(
                    new Module(Usage.MANDATORY, PatientModule::of),
                    new Module(Usage.MANDATORY, GeneralStudyModule::of),
                    new Module(Usage.MANDATORY, GeneralSeriesModule::of),
                    new Module(Usage.MANDATORY, GeneralEquipmentModule::of),
                    new Module(Usage.MANDATORY, WaveformIdentificationModule::of),
                    new Module(Usage.MANDATORY, WaveformModule::of),
                    new Module(Usage.USER_OPTION, AcquisitionContextModule::of),
                    new Module(Usage.MANDATORY, SopCommonModule::of),
                    new Module(Usage.USER_OPTION, RequestedOrderModule::of));

    private AmbulatoryEcgIod() {}

    /**
     * Writes the objects of a recording, which is read to its end and stays open.
     *
     * @return what was written, in time order; empty when the recording has no sample
     * @throws dev.isoline.order.ContentError when the recording cannot be an Ambulatory ECG; the
     *     problems are located by tag
     * @throws IOException when the recording cannot be read or the sink not be written
     */
    public static List<WrittenObject> write(
            Recording recording, OrderContext order, RecordingContext context, ObjectSink sink)
            throws IOException {
        var series = AmbulatoryEcgSeries.of(recording.header(), order, context);
        try (var objects = new ObjectSeries(series, order, sink)) {
            for (Optional<Block> block = recording.next();
                    block.isPresent();
                    block = recording.next()) {
                objects.append(block.get());
            }
            return objects.finish();
        }
    }

    /** The object's data set, module by module. */
    static DataSet dataSet(WaveformObject object) {
        var dataSet = new DataSet();
        for (Module module : MODULES) {
            dataSet.putAll(module.writer().apply(object));
        }
        return dataSet;
    }
}
