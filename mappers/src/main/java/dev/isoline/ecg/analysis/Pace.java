package dev.isoline.ecg.analysis;

/**
 * Sampling frequency of a recording, and the coarser steps in which QRS complexes are looked at.
 *
 * @param hz samples a second
 * @param step samples to one step: about 125 steps a second
 */
record Pace(double hz, int step) {

    private static final double STEPS_HZ = 125;

    static Pace of(double hz) {
        return new Pace(hz, (int) Math.max(1, Math.round(hz / STEPS_HZ)));
    }

    int samples(double seconds) {
        return (int) Math.max(1, Math.round(hz * seconds));
    }

    int steps(double seconds) {
        return (int) Math.max(1, Math.round(hz * seconds / step));
    }
}
