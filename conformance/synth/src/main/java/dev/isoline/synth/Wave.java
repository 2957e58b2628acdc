package dev.isoline.synth;

/**
 * One deflection as a Gaussian.
 *
 * @param at seconds from the R peak
 * @param height millivolts
 * @param width standard deviation in seconds
 */
record Wave(double at, double height, double width) {

    /** Beyond this a Gaussian is under a tenth of a microvolt. */
    private static final double REACH = 5;

    double millivolts(double seconds) {
        double z = (seconds - at) / width;
        return Math.abs(z) > REACH ? 0 : height * Math.exp(-z * z / 2);
    }
}
