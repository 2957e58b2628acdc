package dev.isoline.ecg.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.LeadReport;
import dev.isoline.ecg.summary.MinuteQuality;
import dev.isoline.synth.EcgPlan;
import dev.isoline.synth.Noise;
import dev.isoline.synth.Synthesiser;
import dev.isoline.synth.TrueBeat;
import java.io.IOException;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What the synthesiser put into a recording is found again, at every heart rate, height, noise and
 * sampling rate: every two values of two of them meet.
 */
class SynthesiserGridTest {

    private static final int SECONDS = 90;

    /** Height of the R peak in MLII as the synthesiser shapes it, and of its whole QRS complex. */
    private static final double R_MILLIVOLTS = 1.1;

    private static final double QRS_MILLIVOLTS = 1.31;

    /** What disturbs, in millivolts; muscle noise is at most an eighth of the R peak. */
    private enum Disturbed {
        BY_NOTHING(Noise.NONE),
        IN_DAILY_LIFE(Noise.AMBULATORY),
        BY_HUM(new Noise(0, 0.1, 0.005)),
        BY_MUSCLES(new Noise(0.05, 0, 0.025)),
        BY_WANDER(new Noise(0.5, 0, 0.005));

        private final Noise noise;

        Disturbed(Noise noise) {
            this.noise = noise;
        }
    }

    private record Cell(double perMinute, double millivolts, Disturbed disturbed, int hz) {

        /** Breathing and jitter as in sinus rhythm, less at a rate that leaves no room for it. */
        EcgPlan plan() {
            double variability = Math.min(0.03, 1.5 / perMinute);
            return EcgPlan.steady(hz, SECONDS, perMinute)
                    .with(new EcgPlan.Rate(perMinute, perMinute, variability, variability / 2))
                    .with(disturbed.noise)
                    .withAmplitude(millivolts / R_MILLIVOLTS);
        }

        @Override
        public String toString() {
            return perMinute
                    + " /min, "
                    + millivolts
                    + " mV, disturbed "
                    + disturbed
                    + ", "
                    + hz
                    + " Hz";
        }
    }

    static Stream<Cell> cells() {
        double[] rates = {30, 45, 60, 75, 100, 150, 220};
        double[] heights = {0.2, 0.5, 1, 3};
        int[] frequencies = {125, 128, 200, 250, 360, 500, 1000};
        var disturbed = Disturbed.values();
        return Pairwise.rows(rates.length, heights.length, disturbed.length, frequencies.length)
                .stream()
                .map(
                        row ->
                                new Cell(
                                        rates[row[0]],
                                        heights[row[1]],
                                        disturbed[row[2]],
                                        frequencies[row[3]]));
    }

    @ParameterizedTest
    @MethodSource("cells")
    void beats_rate_pauses_and_noise_are_found_as_they_were_made(Cell cell) throws IOException {
        var plan = cell.plan();
        var ecg = new Synthesiser(plan);
        var findings = Analysis.findings(new SynthesisedRecording(plan), AnalysisSettings.DEFAULT);
        assertFound(findings.beats(), ecg.beats(), plan.hz());
        var summary = findings.summary();
        assertThat(summary.rates().whole().orElseThrow().mean())
                .isCloseTo(ecg.truth().meanRate(), within(0.01 * cell.perMinute));
        assertQuality(summary.coverage().leads().get(0), cell);
    }

    private static void assertFound(List<Beat> found, List<TrueBeat> beats, int hz) {
        long window = Math.round(0.06 * hz);
        int matched = 0;
        int j = 0;
        for (var beat : beats) {
            while (j < found.size() && found.get(j).sample() < beat.sample() - window) {
                j++;
            }
            if (j < found.size() && found.get(j).sample() <= beat.sample() + window) {
                matched++;
                j++;
            }
        }
        assertThat(beats.size() - matched)
                .as("beats missed of " + beats.size())
                .isLessThanOrEqualTo(beats.size() / 100);
        assertThat(found.size() - matched)
                .as("beats that are none, beside " + matched)
                .isLessThanOrEqualTo(beats.size() / 100);
    }

    private static void assertQuality(LeadReport lead, Cell cell) {
        var noise = cell.disturbed.noise;
        assertThat(lead.usableShare()).as("usable").isEqualTo(1);
        MinuteQuality.Levels levels = lead.minutes().get(0).levels().orElseThrow();
        double height = 1000 * QRS_MILLIVOLTS / R_MILLIVOLTS * cell.millivolts;
        double added = 1000 * (2 * noise.mains() + 5 * noise.muscle());
        assertThat((double) levels.amplitude())
                .as("amplitude")
                .isBetween(0.85 * height, 1.1 * height + added);
        assertThat((double) levels.mains())
                .as("mains")
                .isCloseTo(1000 * noise.mains(), within(3 + 100 * noise.mains() + 0.005 * height));
        assertThat((double) levels.muscle())
                .as("muscle")
                .isCloseTo(
                        1000 * noise.muscle(), within(5 + 150 * noise.muscle() + 0.005 * height));
        assertThat((double) levels.wander())
                .as("wander")
                .isCloseTo(2000 * noise.wander(), within(40 + 300 * noise.wander() + 0.1 * height));
    }
}
