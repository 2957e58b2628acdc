package dev.isoline.ecg.analysis;

import java.util.Optional;

/**
 * SDNN, RMSSD and pNN50 over normal-to-normal intervals (Task Force ESC/NASPE, Eur Heart J
 * 1996;17:354-381). Differences are taken between two NN intervals that share a beat.
 */
final class HeartRateVariability {

    private static final double NN50 = 50;

    private long intervals;
    private double mean;
    private double squares;
    private long differences;
    private double squaredDifferences;
    private long over50;
    private double before = Double.NaN;

    /** The next interval in milliseconds; {@link Double#NaN} when it is not normal to normal. */
    void add(double nn) {
        if (!Double.isNaN(nn)) {
            double delta = nn - mean;
            mean += delta / ++intervals;
            squares += delta * (nn - mean);
            difference(nn - before);
        }
        before = nn;
    }

    private void difference(double difference) {
        if (!Double.isNaN(difference)) {
            differences++;
            squaredDifferences += difference * difference;
            over50 += Math.abs(difference) > NN50 ? 1 : 0;
        }
    }

    /** Empty without two neighbouring NN intervals. */
    Optional<Summary.Variability> measures() {
        return differences == 0
                ? Optional.empty()
                : Optional.of(
                        new Summary.Variability(
                                intervals,
                                Math.sqrt(squares / (intervals - 1)),
                                Math.sqrt(squaredDifferences / differences),
                                100.0 * over50 / differences));
    }
}
