package dev.isoline.ecgdicom.iod;

import dev.isoline.dicom.DataSet;
import dev.isoline.ecgdicom.module.AcquisitionContextModule;
import dev.isoline.ecgdicom.module.GeneralEquipmentModule;
import dev.isoline.ecgdicom.module.GeneralSeriesModule;
import dev.isoline.ecgdicom.module.GeneralStudyModule;
import dev.isoline.ecgdicom.module.PatientModule;
import dev.isoline.ecgdicom.module.PatientStudyModule;
import dev.isoline.ecgdicom.module.RequestedOrderModule;
import dev.isoline.ecgdicom.module.SopCommonModule;
import dev.isoline.ecgdicom.module.WaveformAnnotationModule;
import dev.isoline.ecgdicom.module.WaveformIdentificationModule;
import dev.isoline.ecgdicom.module.WaveformModule;
import dev.isoline.ecgdicom.module.WaveformObject;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The ECG waveform IODs of PS3.3 A.34 that are written here: modules and limits as data. */
public enum EcgIod {
    // spotless:off
    //             SOP Class UID                    PS3.3     as told            groups channels Hz         samples   interpretation
    TWELVE_LEAD("1.2.840.10008.5.1.4.1.1.9.1.1", "A.34.3", "A 12-lead ECG",    5, 13, 200, 1000, 16_384,         Set.of("SS")),
    GENERAL    ("1.2.840.10008.5.1.4.1.1.9.1.2", "A.34.4", "A General ECG",    4, 24, 200, 1000, Long.MAX_VALUE, Set.of("SS")),
    AMBULATORY ("1.2.840.10008.5.1.4.1.1.9.1.3", "A.34.5", "An Ambulatory ECG", 1, 12,  50, 1000, Long.MAX_VALUE, Set.of("SB", "SS"));

    /**
     * PS3.3 tables A.34.3-1, A.34.4-1 and A.34.5-1, which differ in one usage: Acquisition Context
     * is M, but U for Ambulatory ECG. It is always written, for dciodvfy 20220618 asks for it.
     */
    private static final List<IodModule<WaveformObject>> MODULES = List.of(
            IodModule.mandatory  (PatientModule::of),
            IodModule.notWritten ("Clinical Trial Subject"),
            IodModule.mandatory  (GeneralStudyModule::of),
            IodModule.userOption (PatientStudyModule::of),
            IodModule.notWritten ("Clinical Trial Study"),
            IodModule.mandatory  (GeneralSeriesModule::of),
            IodModule.notWritten ("Clinical Trial Series"),
            IodModule.notWritten ("Synchronization"),
            IodModule.mandatory  (GeneralEquipmentModule::of),
            IodModule.mandatory  (WaveformIdentificationModule::of),
            IodModule.mandatory  (WaveformModule::of),
            IodModule.mandatory  (AcquisitionContextModule::of),
            IodModule.conditional(WaveformAnnotationModule::of),   // C: if annotation is present
            IodModule.mandatory  (SopCommonModule::of),
            IodModule.extension  (RequestedOrderModule::of));
    // spotless:on

    private final String sopClassUid;
    private final String section;
    private final String title;
    final int mostGroups;
    final int mostChannels;
    final int lowestHz;
    final int highestHz;
    final long mostSamples;
    final Set<String> interpretations;

    EcgIod(
            String sopClassUid,
            String section,
            String title,
            int mostGroups,
            int mostChannels,
            int lowestHz,
            int highestHz,
            long mostSamples,
            Set<String> interpretations) {
        this.sopClassUid = sopClassUid;
        this.section = section;
        this.title = title;
        this.mostGroups = mostGroups;
        this.mostChannels = mostChannels;
        this.lowestHz = lowestHz;
        this.highestHz = highestHz;
        this.mostSamples = mostSamples;
        this.interpretations = interpretations;
    }

    /** The IOD of a SOP class, empty for another one. */
    public static Optional<EcgIod> of(String sopClassUid) {
        return Arrays.stream(values()).filter(i -> i.sopClassUid.equals(sopClassUid)).findFirst();
    }

    public String sopClassUid() {
        return sopClassUid;
    }

    /** Section of PS3.3. */
    public String section() {
        return section;
    }

    /** Such as {@code An Ambulatory ECG}. */
    String title() {
        return title;
    }

    /** Whether a rate is one of this IOD. */
    boolean takes(double hz) {
        return hz >= lowestHz && hz <= highestHz;
    }

    /** The object's data set, module by module. */
    static DataSet dataSet(WaveformObject object) {
        return IodModule.write(MODULES, object);
    }
}
