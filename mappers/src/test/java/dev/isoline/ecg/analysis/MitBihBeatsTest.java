package dev.isoline.ecg.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Beat.Kind;
import dev.isoline.ecg.Damage;
import dev.isoline.ecg.FilesInFolder;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Measure;
import dev.isoline.ecg.summary.Variability;
import dev.isoline.ecg.wfdb.WfdbRecording;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Beats of MIT-BIH records against their reference annotations: a reference beat counts as found
 * when a beat of its class is within 150 ms (ANSI/AAMI EC57).
 */
class MitBihBeatsTest {

    private static final long WINDOW = 54; // 150 ms at 360 Hz

    private static boolean near(List<Beat> beats, Beat beat, Kind kind) {
        return beats.stream()
                .anyMatch(
                        other ->
                                Math.abs(other.sample() - beat.sample()) <= WINDOW
                                        && (kind == null || other.kind() == kind));
    }

    /** Share of beats, in percent, that have one of the class, if any is given, near in others. */
    private static double found(List<Beat> beats, List<Beat> others, Kind kind) {
        var looked = beats.stream().filter(b -> kind == null || b.kind() == kind).toList();
        return 100.0 * looked.stream().filter(b -> near(others, b, kind)).count() / looked.size();
    }

    @ParameterizedTest(name = "record {0}")
    @CsvSource({"105, 99, 97, 75, 40", "116, 99.8, 99.8, 95, 95", "221, 99.8, 99.8, 97, 97"})
    void most_reference_beats_are_found_and_most_found_ones_are_reference_beats(
            String record, double beats, double right, double ventricular, double ventricularRight)
            throws IOException {
        try (var recording = open(record, ".hea", ".dat", ".atr")) {
            var reference = recording.referenceBeats();
            var found = Detection.in(recording).beats();
            assertThat(found(reference, found, null)).isGreaterThan(beats);
            assertThat(found(found, reference, null)).isGreaterThan(right);
            assertThat(found(reference, found, Kind.V)).isGreaterThan(ventricular);
            assertThat(found(found, reference, Kind.V)).isGreaterThan(ventricularRight);
        }
    }

    /** Sinus rhythm; in fibrillation and among many ectopic beats, which beats count decides. */
    @ParameterizedTest(name = "record {0}")
    @ValueSource(strings = {"100", "103", "112", "121", "122", "205", "212", "230"})
    void variability_is_that_of_the_reference_beats(String record) throws IOException {
        var reference = variability(record, ".hea", ".dat", ".atr");
        var found = variability(record, ".hea", ".dat");
        assertThat(value(found.sdnn())).isCloseTo(value(reference.sdnn()), within(1.0));
        assertThat(value(found.rmssd())).isCloseTo(value(reference.rmssd()), within(2.0));
    }

    private static Variability variability(String record, String... files) throws IOException {
        try (var recording = open(record, files)) {
            return Analysis.summarise(recording, AnalysisSettings.DEFAULT).variability();
        }
    }

    private static double value(Measure measure) {
        return measure.value().orElseThrow();
    }

    private static Recording open(String record, String... files) throws IOException {
        var shared = Path.of(System.getenv().getOrDefault("ISOLINE_SHARED", "../../shared"));
        var folder = shared.resolve("data/ecg/mitdb");
        assumeTrue(Files.exists(folder), "no MIT-BIH records at " + folder);
        var names = Stream.of(files).map(file -> record + file).toList();
        return WfdbRecording.open(new FilesInFolder(folder, names), names.get(0), Damage.REFUSE);
    }
}
