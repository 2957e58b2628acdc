package dev.isoline.ecg.rhythm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dev.isoline.ecg.Stretch;
import dev.isoline.ecg.rhythm.BeatTrack.Origin;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Ectopy;
import dev.isoline.ecg.summary.Episode;
import dev.isoline.ecg.summary.Measure;
import dev.isoline.ecg.summary.Variability;
import dev.isoline.ecg.wfdb.WfdbAnnotations;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Counts, groups and heart rate variability of beats somebody classified equal what a program that
 * shares no code with ours computes from the annotation file.
 */
class ClassifiedBeatsTest {

    private static final double HZ = 360;
    private static final long SAMPLES = 650_000;
    private static final int FILES = 12;

    @TempDir Path folder;

    @Test
    void the_records_beside_the_repository_give_the_same_to_the_last_beat() throws Exception {
        String shared = System.getenv().getOrDefault("ISOLINE_SHARED", "../../shared");
        Path records = Path.of(shared, "data/ecg/mitdb");
        assumeTrue(Files.isDirectory(records), () -> "no test material in " + records);
        try (var files = Files.list(records)) {
            compare(files.filter(file -> file.toString().endsWith(".atr")).sorted().toList());
        }
    }

    @Test
    void annotation_files_made_by_chance_give_the_same_to_the_last_beat() throws Exception {
        var files = new ArrayList<Path>();
        for (int seed = 0; seed < FILES; seed++) {
            Path file = folder.resolve("made" + seed + ".atr");
            files.add(Files.write(file, MadeAnnotations.of(seed, SAMPLES)));
        }
        compare(files);
    }

    private void compare(List<Path> files) throws IOException, InterruptedException {
        var expected = IndependentMeasures.of(folder, HZ, SAMPLES, files);
        assertThat(expected).hasSameSizeAs(files);
        for (Path file : files) {
            String name = file.getFileName().toString();
            var ours = ours(file);
            assertThat(ours.keySet()).as(name).isEqualTo(expected.get(name).keySet());
            expected.get(name)
                    .forEach(
                            (measure, value) ->
                                    assertThat(ours.get(measure))
                                            .as(name + " " + measure)
                                            .isCloseTo(value, byRounding(value)));
        }
    }

    /** What two orders of summation may differ by: far below a beat and 0.1 ms. */
    private static Offset<Double> byRounding(double value) {
        return Offset.offset(1e-6 + 1e-9 * Math.abs(value));
    }

    private static Map<String, Double> ours(Path file) throws IOException {
        try (var channel = FileChannel.open(file)) {
            var annotations = WfdbAnnotations.read(channel, HZ, 1);
            var track =
                    new BeatTrack(
                            annotations.beats(),
                            Origin.REFERENCE,
                            HZ,
                            List.of(new Stretch(0, SAMPLES)),
                            List.of(),
                            annotations.flutter());
            return flat(new BeatMeasures(track, AnalysisSettings.DEFAULT));
        }
    }

    private static Map<String, Double> flat(BeatMeasures measures) {
        var flat = new TreeMap<String, Double>();
        var beats = measures.beats();
        beats.classified().forEach((kind, n) -> flat.put("classes." + kind, (double) n));
        ectopy("ventricular", beats.ventricular().orElseThrow(), flat);
        ectopy("supraventricular", beats.supraventricular().orElseThrow(), flat);
        var longest = measures.rates().longestRr().orElseThrow().length();
        flat.put("longest", (double) Math.round(longest.toNanos() * HZ / 1e9));
        variability(measures.variability(), flat);
        return flat;
    }

    private static void ectopy(String name, Ectopy ectopy, Map<String, Double> flat) {
        flat.put(name + ".beats", (double) ectopy.beats());
        flat.put(name + ".couplets", (double) ectopy.couplets());
        flat.put(name + ".triplets", (double) ectopy.triplets());
        flat.put(name + ".runs", (double) ectopy.runs());
        flat.put(name + ".runBeats", (double) ectopy.runBeats());
        flat.put(name + ".longestRun", (double) ectopy.longestRun().map(Episode::beats).orElse(0L));
    }

    private static void variability(Variability v, Map<String, Double> flat) {
        flat.put("variability.intervals", (double) v.intervals());
        flat.put("variability.analysed", v.analysed().toNanos() / 1e9);
        measure("sdnn", v.sdnn(), flat);
        measure("sdann", v.sdann(), flat);
        measure("sdnnIndex", v.sdnnIndex(), flat);
        measure("rmssd", v.rmssd(), flat);
        measure("pnn50", v.pnn50(), flat);
        measure("triangularIndex", v.triangularIndex(), flat);
    }

    private static void measure(String name, Measure measure, Map<String, Double> flat) {
        measure.value().ifPresent(value -> flat.put("variability." + name, value));
    }
}
