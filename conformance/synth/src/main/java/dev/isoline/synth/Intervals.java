package dev.isoline.synth;

import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * The intervals between successive beats, milliseconds, and which of them lie between two normal
 * beats (NN; Task Force ESC/NASPE, Eur Heart J 1996;17:354-381).
 */
record Intervals(double[] rr, boolean[] normal) {

    static Intervals of(int hz, List<TrueBeat> beats) {
        int n = Math.max(0, beats.size() - 1);
        var intervals = new Intervals(new double[n], new boolean[n]);
        for (int i = 0; i < n; i++) {
            TrueBeat a = beats.get(i);
            TrueBeat b = beats.get(i + 1);
            intervals.rr[i] = 1000.0 * (b.sample() - a.sample()) / hz;
            intervals.normal[i] = a.kind() == BeatKind.NORMAL && b.kind() == BeatKind.NORMAL;
        }
        return intervals;
    }

    double mean() {
        return Arrays.stream(rr).average().orElse(Double.NaN);
    }

    double longest() {
        return Arrays.stream(rr).max().orElse(Double.NaN);
    }

    List<Double> from(double milliseconds) {
        return Arrays.stream(rr).filter(x -> x >= milliseconds).boxed().toList();
    }

    double highestMeanOf(int count) {
        return meansOf(count).max().orElse(Double.NaN);
    }

    double lowestMeanOf(int count) {
        return meansOf(count).min().orElse(Double.NaN);
    }

    private DoubleStream meansOf(int count) {
        return IntStream.rangeClosed(0, rr.length - count)
                .mapToDouble(i -> Arrays.stream(rr, i, i + count).average().orElseThrow());
    }

    double sdnn() {
        double mean = nn().average().orElse(Double.NaN);
        double squares = nn().map(x -> (x - mean) * (x - mean)).sum();
        return Math.sqrt(squares / (nn().count() - 1));
    }

    double rmssd() {
        return Math.sqrt(differences().map(d -> d * d).average().orElse(Double.NaN));
    }

    double pnn50() {
        return 100.0 * differences().filter(d -> Math.abs(d) > 50).count() / differences().count();
    }

    private DoubleStream nn() {
        return IntStream.range(0, rr.length).filter(i -> normal[i]).mapToDouble(i -> rr[i]);
    }

    /** Between NN intervals that follow each other directly. */
    private DoubleStream differences() {
        return IntStream.range(1, rr.length)
                .filter(i -> normal[i] && normal[i - 1])
                .mapToDouble(i -> rr[i] - rr[i - 1]);
    }
}
