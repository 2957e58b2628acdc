package dev.isoline.synth;

/**
 * What disturbs all leads all the time, in millivolts.
 *
 * @param wander amplitude of the baseline's slow drift
 * @param mains amplitude of 50 Hz hum
 * @param muscle standard deviation of white noise
 */
public record Noise(double wander, double mains, double muscle) {

    public static final Noise NONE = new Noise(0, 0, 0);

    /** A recorder worn in daily life, quiet enough that no beat is in doubt. */
    public static final Noise AMBULATORY = new Noise(0.15, 0.02, 0.015);

    static final double WANDER_HZ = 0.19;
    static final double MAINS_HZ = 50;
}
