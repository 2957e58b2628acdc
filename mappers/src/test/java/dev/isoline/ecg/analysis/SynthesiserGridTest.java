package dev.isoline.ecg.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Episode;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.LeadReport;
import dev.isoline.synth.BeatKind;
import dev.isoline.synth.EcgPlan;
import dev.isoline.synth.Synthesiser;
import java.io.IOException;
import java.time.Duration;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What the synthesiser put into a recording is found again, at every heart rate, height, noise and
 * sampling rate: every two values of two of them meet.
 */
class SynthesiserGridTest {

    private static final int SECONDS = 90;
    private static final double PAUSE_SECONDS = 3.2;

    static Stream<GridCell> cells() {
        double[] rates = {30, 45, 60, 75, 100, 150, 220};
        double[] heights = {0.2, 0.5, 1, 3};
        return GridCell.cells(rates, heights, 125, 128, 200, 250, 360, 500, 1000);
    }

    @ParameterizedTest
    @MethodSource("cells")
    void beats_rate_pause_and_noise_are_found_as_they_were_made(GridCell cell) throws IOException {
        int middle = (int) (cell.perMinute() / 2);
        var plan = cell.plan(SECONDS).with(new EcgPlan.Pause(middle, PAUSE_SECONDS));
        var ecg = new Synthesiser(plan);
        var findings = Analysis.findings(new SynthesisedRecording(plan), AnalysisSettings.DEFAULT);
        var score = new BeatScore(BeatKind.VENTRICULAR, Beat.Kind.V);
        score.add(findings.beats(), ecg.beats(), plan.hz());
        assertThat(score.missed()).as("%s", score).isLessThanOrEqualTo(ecg.beats().size() / 100);
        assertThat(score.wrong()).as("%s", score).isLessThanOrEqualTo(ecg.beats().size() / 100);
        var summary = findings.summary();
        assertThat(summary.rates().whole().orElseThrow().mean())
                .isCloseTo(ecg.truth().meanRate(), within(0.01 * cell.perMinute()));
        assertQuality(summary.coverage().leads().get(0), cell);
        if (isPauseQuiet(cell)) {
            assertThat(summary.rhythm().of(EpisodeKind.PAUSE))
                    .extracting(Episode::duration)
                    .filteredOn(pause -> pause.compareTo(Duration.ofMillis(2300)) > 0)
                    .singleElement()
                    .satisfies(p -> assertThat(p.toMillis()).isCloseTo(3200, within(20L)));
        }
    }

    /**
     * In a fast rhythm noise is not seen before a pause begins, and may be taken for a beat in it.
     */
    private static boolean isPauseQuiet(GridCell cell) {
        return cell.perMinute() <= 100
                || 20 * cell.disturbed().noise().muscle() <= cell.millivolts();
    }

    private static void assertQuality(LeadReport lead, GridCell cell) {
        var noise = cell.disturbed().noise();
        var levels = lead.minutes().get(0).levels().orElseThrow();
        double height = cell.qrsHeight();
        double added = 1000 * (2 * noise.mains() + 5 * noise.muscle());
        assertThat(lead.usableShare()).as("usable").isEqualTo(1);
        assertThat((double) levels.amplitude())
                .as("amplitude")
                .isBetween(0.85 * height, 1.1 * height + added);
        assertLevel("mains", levels.mains(), noise.mains(), 3 + 0.005 * height, 0.1);
        assertLevel("muscle", levels.muscle(), noise.muscle(), 5 + 0.005 * height, 0.15);
        assertLevel("wander", levels.wander(), 2 * noise.wander(), 40 + 0.1 * height, 0.15);
    }

    private static void assertLevel(
            String name, int microvolts, double millivolts, double fixed, double share) {
        double truth = 1000 * millivolts;
        assertThat((double) microvolts).as(name).isCloseTo(truth, within(fixed + share * truth));
    }
}
