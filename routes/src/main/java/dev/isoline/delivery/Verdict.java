package dev.isoline.delivery;

import java.time.Duration;

/**
 * What came of one attempt.
 *
 * @param text the receipt, or what went wrong: codes and places, never what was sent
 * @param patience how long an answer that comes later is waited for
 */
public record Verdict(Outcome outcome, String text, Duration patience) {

    public Verdict(Outcome outcome, String text) {
        this(outcome, text, Duration.ZERO);
    }

    /** What the worker does next. */
    public enum Outcome {
        /** The receiver took it. */
        DELIVERED,
        /** The receiver has it, but has not committed itself to keep it. */
        STORED,
        /** The receiver will answer later, by a way of its own. */
        AWAITING,
        /** The receiver could not take it now. */
        RETRY,
        /** The receiver will not take these bytes, however often they come. */
        REFUSED
    }

    public static Verdict delivered(String receipt) {
        return new Verdict(Outcome.DELIVERED, receipt);
    }

    public static Verdict stored(String receipt) {
        return new Verdict(Outcome.STORED, receipt);
    }

    public static Verdict awaiting(String what, Duration patience) {
        return new Verdict(Outcome.AWAITING, what, patience);
    }

    public static Verdict retry(String error) {
        return new Verdict(Outcome.RETRY, error);
    }

    public static Verdict refused(String error) {
        return new Verdict(Outcome.REFUSED, error);
    }
}
