package dev.isoline.ecg.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Block;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingHeader;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.synth.EcgPlan;
import dev.isoline.synth.Noise;
import dev.isoline.synth.Synthesiser;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The atria go on while the ventricles pause: P waves alone are no beats and fill no pause. */
class BlockedAtrialBeatsTest {

    private static final int HZ = 250;
    private static final double PAUSE_SECONDS = 5;

    /** PQ time and P wave of about 100 ms and 0.15 mV: usual values, no source. */
    private static final double PQ_SECONDS = 0.16;

    private static final double P_SECONDS = 0.025;
    private static final double P_MILLIVOLTS = 0.15;

    @ParameterizedTest
    @ValueSource(doubles = {45, 60, 75, 100})
    void p_waves_without_beats_do_not_fill_a_pause(double perMinute) throws IOException {
        for (double millivolts : new double[] {0.5, 1}) {
            for (double muscle : new double[] {0.005, 0.02}) {
                assertPause(perMinute, millivolts, muscle);
            }
        }
    }

    private static void assertPause(double perMinute, double millivolts, double muscle)
            throws IOException {
        int last = (int) (perMinute / 2);
        var plan =
                new GridCell(perMinute, millivolts, GridCell.Disturbed.BY_NOTHING, HZ)
                        .plan(90)
                        .with(new Noise(0.1, 0.01, muscle))
                        .with(new EcgPlan.Pause(last, PAUSE_SECONDS));
        double from = (double) new Synthesiser(plan).beats().get(last).sample() / HZ;
        double interval = 60 / perMinute;
        var blocked =
                new Atria(
                        new SynthesisedRecording(plan),
                        from + interval - PQ_SECONDS,
                        from + PAUSE_SECONDS - interval / 2,
                        interval);
        var rates = Analysis.summarise(blocked, AnalysisSettings.DEFAULT).rates();
        assertThat(rates.longestRr().orElseThrow().length().toMillis())
                .as("%.1f mV, noise of %.3f mV", millivolts, muscle)
                .isCloseTo((long) (1000 * PAUSE_SECONDS), within(20L));
    }

    /** A recording with further P waves, the same in all leads. */
    private record Atria(Recording of, double first, double end, double every)
            implements Recording {

        @Override
        public RecordingHeader header() {
            return of.header();
        }

        @Override
        public Optional<Block> next() throws IOException {
            var block = of.next();
            block.ifPresent(this::add);
            return block;
        }

        private void add(Block block) {
            for (int[] lead : block.samples()) {
                for (int i = 0; i < lead.length; i++) {
                    lead[i] +=
                            (int) Math.round(EcgPlan.UNITS_PER_MILLIVOLT * at(block.first() + i));
                }
            }
        }

        private double at(long sample) {
            double seconds = (double) sample / HZ;
            double millivolts = 0;
            for (double p = first; p < end; p += every) {
                double away = (seconds - p) / P_SECONDS;
                millivolts += P_MILLIVOLTS * Math.exp(-away * away / 2);
            }
            return millivolts;
        }

        @Override
        public List<Beat> referenceBeats() {
            return List.of();
        }

        @Override
        public void close() throws IOException {
            of.close();
        }
    }
}
