package dev.isoline.ecg.analysis;

import java.util.Arrays;

/** Median of the last eight values. */
final class Median {

    private static final int LENGTH = 8;

    private final double[] ring = new double[LENGTH];
    private final double[] sorted = new double[LENGTH];
    private int at;
    private double median;

    Median(double initial) {
        fill(initial);
    }

    void fill(double value) {
        Arrays.fill(ring, value);
        median = value;
    }

    void add(double value) {
        ring[at] = value;
        at = (at + 1) % LENGTH;
        System.arraycopy(ring, 0, sorted, 0, LENGTH);
        Arrays.sort(sorted);
        median = (sorted[LENGTH / 2 - 1] + sorted[LENGTH / 2]) / 2;
    }

    double value() {
        return median;
    }

    double mean() {
        double sum = 0;
        for (double value : ring) {
            sum += value;
        }
        return sum / LENGTH;
    }
}
