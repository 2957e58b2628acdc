package dev.isoline.synth;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;

/** Whole recordings as files, each with the samples it holds beside it for later comparison. */
public final class RecordingFile {

    private RecordingFile() {}

    public static void edfPlus(
            Synthesiser ecg, EcgPlan plan, EdfIdentity identity, Path file, Path samples)
            throws IOException {
        var out = new BufferedOutputStream(Files.newOutputStream(file));
        try (var edf = new EdfPlusWriter(plan, identity, out);
                var raw = new RawSamples(samples)) {
            ecg.writeTo(both(edf, raw));
        }
    }

    /** {@code name.hea}, {@code name.dat} and {@code name.atr}; returns them in this order. */
    public static List<Path> wfdb(
            Synthesiser ecg,
            EcgPlan plan,
            WfdbSamples format,
            LocalDateTime start,
            Path folder,
            String name,
            Path samples)
            throws IOException {
        try (var wfdb = new WfdbWriter(plan, format, start, folder, name);
                var raw = new RawSamples(samples)) {
            ecg.writeTo(both(wfdb, raw));
        }
        Path atr = folder.resolve(name + ".atr");
        try (var out = Files.newOutputStream(atr)) {
            WfdbAnnotations.write(ecg.beats(), out);
        }
        return List.of(folder.resolve(name + ".hea"), folder.resolve(name + ".dat"), atr);
    }

    private static FrameSink both(FrameSink first, FrameSink second) {
        return samples -> {
            first.frame(samples);
            second.frame(samples);
        };
    }
}
