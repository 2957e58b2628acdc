package dev.isoline.dicom.spi;

/** Status classes, PS3.7 annex C. */
public enum StatusClass {
    SUCCESS,
    PENDING,
    CANCEL,
    /** Completed, but something was wrong. */
    WARNING,
    /** Not performed. */
    FAILURE
}
