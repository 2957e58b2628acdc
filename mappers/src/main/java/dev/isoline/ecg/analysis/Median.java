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
        Arrays.fill(sorted, value);
        median = value;
    }

    void add(double value) {
        sort(ring[at], value);
        ring[at] = value;
        at = (at + 1) % LENGTH;
        median = (sorted[LENGTH / 2 - 1] + sorted[LENGTH / 2]) / 2;
    }

    /** Puts a value in the place of another and moves it to its own. */
    private void sort(double gone, double value) {
        int i = 0;
        while (sorted[i] != gone) {
            i++;
        }
        for (; i > 0 && sorted[i - 1] > value; i--) {
            sorted[i] = sorted[i - 1];
        }
        for (; i < LENGTH - 1 && sorted[i + 1] < value; i++) {
            sorted[i] = sorted[i + 1];
        }
        sorted[i] = value;
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
