package dev.isoline.ecg.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Episode;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.LeadReport;
import dev.isoline.ecg.summary.Summary;
import dev.isoline.synth.BeatKind;
import dev.isoline.synth.EcgPlan;
import dev.isoline.synth.Noise;
import dev.isoline.synth.Synthesiser;
import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

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
        assertThat(longPauses(summary)).singleElement().matches(SynthesiserGridTest::isClose);
    }

    /** Noise must not be taken for the beats a pause lacks, above all in a fast rhythm. */
    @ParameterizedTest
    @ValueSource(doubles = {45, 75, 110, 130, 150, 180, 220})
    void noise_does_not_fill_a_pause(double rate) throws IOException {
        for (int hz : new int[] {125, 250, 360}) {
            for (double muscle : new double[] {0.02, 0.035, 0.05}) {
                assertPause(rate, 0.3, hz, muscle);
                assertPause(rate, 0.5, hz, muscle);
            }
        }
    }

    private static void assertPause(double rate, double millivolts, int hz, double muscle)
            throws IOException {
        var plan =
                new GridCell(rate, millivolts, GridCell.Disturbed.BY_NOTHING, hz)
                        .plan(SECONDS)
                        .with(new Noise(0.1, 0.01, muscle))
                        .with(new EcgPlan.Pause((int) rate / 2, PAUSE_SECONDS));
        var recording = new SynthesisedRecording(plan);
        assertThat(longPauses(Analysis.summarise(recording, AnalysisSettings.DEFAULT)))
                .as("%.1f mV, %d Hz, noise of %.3f mV", millivolts, hz, muscle)
                .singleElement()
                .matches(SynthesiserGridTest::isClose);
    }

    private static List<Duration> longPauses(Summary summary) {
        return summary.rhythm().of(EpisodeKind.PAUSE).stream()
                .map(Episode::duration)
                .filter(pause -> pause.compareTo(Duration.ofMillis(2300)) > 0)
                .toList();
    }

    private static boolean isClose(Duration pause) {
        return Math.abs(pause.toMillis() - 1000 * PAUSE_SECONDS) <= 20;
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
