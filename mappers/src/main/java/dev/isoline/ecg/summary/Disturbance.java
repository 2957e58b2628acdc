package dev.isoline.ecg.summary;

/** What disturbs a lead in a second; thresholds: docs/quality.md. */
public enum Disturbance {
    /** No samples, or a value that does not change: no electrode reads the heart. */
    LEAD_OFF,
    /** Samples at the end of the converter's range: what was higher is cut off. */
    SATURATED,
    /** Hum of 50 or 60 Hz. */
    MAINS,
    /** Broad-band noise above about 30 Hz between the QRS complexes. */
    MUSCLE,
    /** Slow drift of the baseline. */
    WANDER,
    /** Noise so high that QRS complexes cannot be told from it. */
    BURIED
}
