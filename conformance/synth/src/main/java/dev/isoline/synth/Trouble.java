package dev.isoline.synth;

import java.util.Random;

/**
 * What goes wrong with one lead for a while.
 *
 * @param lead number of it, the first is 0
 * @param height of the disturbance in millivolts: amplitude of a sine, standard deviation of noise;
 *     of no meaning when the lead is off or saturated
 */
public record Trouble(Kind kind, int lead, Span when, double height) {

    private static final double TURN = 2 * Math.PI;

    /** Kinds of trouble. */
    public enum Kind {
        /** The lead shows nothing, at the middle of its range. */
        OFF,
        /** The lead is at the upper end of its range. */
        SATURATED,
        MAINS_50,
        MAINS_60,
        MUSCLE,
        WANDER
    }

    /** Whether the lead is at one value, whatever the heart does. */
    boolean isHeld() {
        return kind == Kind.OFF || kind == Kind.SATURATED;
    }

    int heldAt() {
        return kind == Kind.SATURATED ? EcgPlan.HIGHEST : 0;
    }

    /** Millivolts it adds at a time. */
    double millivolts(double seconds, Random random) {
        return switch (kind) {
            case OFF, SATURATED -> 0;
            case MAINS_50 -> height * Math.sin(TURN * 50 * seconds);
            case MAINS_60 -> height * Math.sin(TURN * 60 * seconds);
            case MUSCLE -> height * random.nextGaussian();
            case WANDER -> height * Math.sin(TURN * Noise.WANDER_HZ * seconds);
        };
    }
}
