package dev.isoline.ecg;

/**
 * One heart beat.
 *
 * @param sample position of the R peak on the recording's time axis
 * @param kind its class
 */
public record Beat(long sample, Kind kind) {

    /** The five classes of ANSI/AAMI EC57, and the beat nobody has classified. */
    public enum Kind {
        /** Any beat not in another class. */
        N,
        /** Supraventricular ectopic. */
        S,
        /** Ventricular ectopic. */
        V,
        /** Fusion of ventricular and normal. */
        F,
        /** Paced, fusion of paced and normal, or unclassifiable. */
        Q,
        UNCLASSIFIED
    }
}
