package dev.isoline.recordings;

/** A file is not taken; the message is one sentence for its sender, without patient detail. */
public final class RecordingRefused extends RuntimeException {

    private static final long serialVersionUID = 1;

    /** Why: it is not a readable recording, names no known order, or the order cannot take it. */
    public enum Reason {
        UNREADABLE,
        UNKNOWN_ORDER,
        NOT_EXPECTED
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
