package dev.isoline.conformance.demo;

import dev.isoline.synth.EcgPlan;
import dev.isoline.synth.EdfIdentity;
import dev.isoline.synth.Noise;
import dev.isoline.synth.RecordingFile;
import dev.isoline.synth.Synthesiser;
import dev.isoline.synth.WfdbSamples;
import dev.isoline.synth.ZipArchive;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Set;

/** The two recordings of the demo: docs/demo.md. */
final class DemoRecordings {

    /**
     * 20 min of sinus rhythm; a supraventricular beat is followed by a pause of 2.6 s. The pause
     * lies beside an ectopic beat, so it is no normal-to-normal interval, with or without beat
     * classes.
     */
    private static final EcgPlan HARROW_BAY =
            new EcgPlan(
                    250,
                    1200,
                    List.of("MLII", "V5"),
                    1001,
                    new EcgPlan.Rate(62, 84, 0.03, 0.02),
                    Set.of(),
                    Set.of(700),
                    new EcgPlan.Pause(700, 2.6),
                    Noise.AMBULATORY);

    /** 10 min with 12 ventricular and 7 supraventricular beats and a pause of 2.2 s. */
    private static final EcgPlan SABLE_POINT =
            new EcgPlan(
                    250,
                    600,
                    List.of("MLII", "V1"),
                    2002,
                    new EcgPlan.Rate(78, 66, 0.03, 0.02),
                    Set.of(40, 85, 130, 171, 222, 267, 301, 350, 412, 470, 533, 580),
                    Set.of(60, 110, 195, 330, 390, 450, 610),
                    new EcgPlan.Pause(500, 2.2),
                    Noise.AMBULATORY);

    private static final LocalDateTime START = LocalDateTime.of(2026, 11, 2, 11, 0);

    private DemoRecordings() {}

    /** EDF+C; the order number is in its header. */
    static DemoRecording harrowBay(DemoFolder folder) throws IOException {
        var ecg = new Synthesiser(HARROW_BAY);
        Path file = folder.path("recordings/HB-1001.edf");
        Path samples = folder.path("recordings/HB-1001.samples");
        var identity =
                new EdfIdentity(
                        "HB-48213",
                        "F",
                        LocalDate.of(1958, 3, 17),
                        "Quillfeather Odalys",
                        "HB-1001",
                        START);
        RecordingFile.edfPlus(ecg, HARROW_BAY, identity, file, samples);
        return new DemoRecording(
                "HB-1001", file, samples, HARROW_BAY, ecg.beats(), ecg.truth(), false);
    }

    /** WFDB format 212 with beat labels; the order number is its name. */
    static DemoRecording sablePoint(DemoFolder folder) throws IOException {
        var ecg = new Synthesiser(SABLE_POINT);
        Path archive = folder.path("recordings/SP-2002.zip");
        Path samples = folder.path("recordings/SP-2002.samples");
        List<Path> files =
                RecordingFile.wfdb(
                        ecg,
                        SABLE_POINT,
                        WfdbSamples.FORMAT_212,
                        START,
                        folder.path("recordings"),
                        "SP-2002",
                        samples);
        ZipArchive.pack(files, archive);
        return new DemoRecording(
                "SP-2002", archive, samples, SABLE_POINT, ecg.beats(), ecg.truth(), true);
    }
}
