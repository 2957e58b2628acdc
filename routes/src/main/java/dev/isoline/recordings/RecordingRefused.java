package dev.isoline.recordings;

/** A file is not taken; the message is one sentence for its sender, without patient detail. */
public final class RecordingRefused extends RuntimeException {

    private static final long serialVersionUID = 1;

    /** Why. */
    public enum Reason {
        /** It is not a readable recording. */
        UNREADABLE,
        /** It names no order, or one that is not known. */
        UNKNOWN_ORDER,
        /** The order cannot take it. */
        NOT_EXPECTED,
        /** A DICOM object with the SOP Instance UID of one that says something else. */
        ANOTHER_OBJECT
    }

    private final Reason reason;

    public RecordingRefused(Reason reason, String message) {
        super(message);
        this.reason = reason;
    }

    public Reason reason() {
        return reason;
    }
}
