package dev.isoline.ecg.summary;

/** What an episode can be; the definitions with their sources are in docs/analysis.md. */
public enum EpisodeKind {
    /** Irregular without order, {@link Threshold#AF_DURATION} or longer. */
    ATRIAL_FIBRILLATION,
    /**
     * A ventricular run over {@link Threshold#VT_RATE}, {@link Threshold#VT_SUSTAINED} or longer.
     */
    SUSTAINED_VENTRICULAR_TACHYCARDIA,
    /** A ventricular run over {@link Threshold#VT_RATE}, shorter. */
    NONSUSTAINED_VENTRICULAR_TACHYCARDIA,
    /** A ventricular run from {@link Threshold#AIVR_RATE} up to {@link Threshold#VT_RATE}. */
    ACCELERATED_IDIOVENTRICULAR_RHYTHM,
    /** A slower ventricular run. */
    SLOW_VENTRICULAR_RUN,
    /** A supraventricular run over {@link Threshold#SVT_RATE}. */
    SUPRAVENTRICULAR_TACHYCARDIA,
    /** A slower supraventricular run. */
    SLOW_SUPRAVENTRICULAR_RUN,
    VENTRICULAR_COUPLET,
    VENTRICULAR_TRIPLET,
    SUPRAVENTRICULAR_COUPLET,
    SUPRAVENTRICULAR_TRIPLET,
    VENTRICULAR_BIGEMINY,
    VENTRICULAR_TRIGEMINY,
    SUPRAVENTRICULAR_BIGEMINY,
    SUPRAVENTRICULAR_TRIGEMINY,
    /** One interval of {@link Threshold#PAUSE} or longer. */
    PAUSE,
    /**
     * Slower than {@link Threshold#BRADYCARDIA_RATE} for {@link Threshold#RATE_EPISODE} or longer.
     */
    BRADYCARDIA,
    /**
     * Faster than {@link Threshold#TACHYCARDIA_RATE} for {@link Threshold#RATE_EPISODE} or longer.
     */
    TACHYCARDIA
}
