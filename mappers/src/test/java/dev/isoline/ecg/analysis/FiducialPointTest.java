package dev.isoline.ecg.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Measure;
import dev.isoline.synth.Synthesiser;
import java.io.IOException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** R peaks are placed well enough for the variability of what the synthesiser made. */
class FiducialPointTest {

    private static final int SECONDS = 330;

    private static double value(Measure measure) {
        return measure.value().orElseThrow();
    }

    @ParameterizedTest
    @ValueSource(ints = {125, 250, 360, 500, 1000})
    void variability_is_that_of_the_beats_made(int hz) throws IOException {
        for (double rate : new double[] {45, 75, 110}) {
            for (var disturbed : GridCell.Disturbed.values()) {
                assertVariability(new GridCell(rate, 0.5, disturbed, hz));
                assertVariability(new GridCell(rate, 3, disturbed, hz));
            }
        }
    }

    private static void assertVariability(GridCell cell) throws IOException {
        var plan = cell.plan(SECONDS);
        var truth = new Synthesiser(plan).truth();
        var recording = new SynthesisedRecording(plan);
        var found = Analysis.summarise(recording, AnalysisSettings.DEFAULT).variability();
        assertThat(value(found.sdnn())).as("SDNN, %s", cell).isCloseTo(truth.sdnn(), within(0.2));
        assertThat(value(found.rmssd()))
                .as("RMSSD, %s", cell)
                .isCloseTo(truth.rmssd(), within(0.5));
    }
}
