package dev.isoline.ecg.rhythm;

/** Mean and standard deviation of numbers that come one by one (Welford, Technometrics 1962). */
final class Spread {

    private long count;
    private double mean;
    private double squares;

    void add(double value) {
        double delta = value - mean;
        mean += delta / ++count;
        squares += delta * (value - mean);
    }

    long count() {
        return count;
    }

    double mean() {
        return mean;
    }

    /** With n - 1; not a number for fewer than two. */
    double deviation() {
        return Math.sqrt(squares / (count - 1));
    }
}
