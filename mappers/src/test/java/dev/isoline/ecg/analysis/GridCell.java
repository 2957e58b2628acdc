package dev.isoline.ecg.analysis;

import dev.isoline.synth.EcgPlan;
import dev.isoline.synth.Noise;
import java.util.stream.Stream;

/**
 * One of the recordings made to see whether their truth is found again.
 *
 * @param millivolts height of the R peak in the first lead
 */
record GridCell(double perMinute, double millivolts, Disturbed disturbed, int hz) {

    /** Height of the R peak in MLII as the synthesiser shapes it, and of its whole QRS complex. */
    private static final double R_MILLIVOLTS = 1.1;

    private static final double QRS_MILLIVOLTS = 1.31;

    /** What disturbs, in millivolts; muscle noise is at most a tenth of the lowest R peak. */
    enum Disturbed {
        BY_NOTHING(Noise.NONE),
        IN_DAILY_LIFE(Noise.AMBULATORY),
        BY_HUM(new Noise(0, 0.1, 0.005)),
        BY_MUSCLES(new Noise(0.05, 0, 0.02)),
        BY_WANDER(new Noise(0.5, 0, 0.005));

        private final Noise noise;

        Disturbed(Noise noise) {
            this.noise = noise;
        }

        Noise noise() {
            return noise;
        }
    }

    /** So many that every two values of two of the four meet. */
    static Stream<GridCell> cells(double[] rates, double[] heights, int... hz) {
        var disturbed = Disturbed.values();
        return Pairwise.rows(rates.length, heights.length, disturbed.length, hz.length).stream()
                .map(
                        row ->
                                new GridCell(
                                        rates[row[0]],
                                        heights[row[1]],
                                        disturbed[row[2]],
                                        hz[row[3]]));
    }

    /** Breathing and jitter as in sinus rhythm, less at a rate that leaves no room for it. */
    EcgPlan plan(int seconds) {
        double variability = Math.min(0.03, 1.5 / perMinute);
        return EcgPlan.steady(hz, seconds, perMinute)
                .with(new EcgPlan.Rate(perMinute, perMinute, variability, variability / 2))
                .with(disturbed.noise)
                .withAmplitude(millivolts / R_MILLIVOLTS);
    }

    /** From peak to peak, microvolts. */
    double qrsHeight() {
        return 1000 * QRS_MILLIVOLTS / R_MILLIVOLTS * millivolts;
    }

    @Override
    public String toString() {
        return "%.0f /min, %.1f mV, disturbed %s, %d Hz"
                .formatted(perMinute, millivolts, disturbed, hz);
    }
}
