package dev.isoline.order;

/** Where an order stands. */
public enum OrderState {
    /** Stored, not yet judged. */
    RECEIVED,
    /** Something required is missing or contradicts what is known. */
    ON_HOLD,
    /** Complete. */
    ACCEPTED,
    /** Offered to the recorder station. */
    READY,
    /** The recorder is on the patient. */
    RECORDING,
    /** The recording is in and being analysed. */
    RECORDING_RECEIVED,
    /** A preliminary result is out and waits for a clinician. */
    REVIEW,
    /** The final result is out. */
    COMPLETED,
    REJECTED,
    CANCELLED,
    /** The recording cannot be used. */
    FAILED,
    ENTERED_IN_ERROR
}
