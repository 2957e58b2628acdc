package dev.isoline.delivery;

/**
 * What came of one attempt.
 *
 * @param text the receipt, or what went wrong: codes and places, never what was sent
 */
public record Verdict(Outcome outcome, String text) {

    /** What the worker does next. */
    public enum Outcome {
        /** The receiver took it. */
        DELIVERED,
        /** The receiver could not take it now. */
        RETRY,
        /** The receiver will not take these bytes, however often they come. */
        REFUSED
    }

    public static Verdict delivered(String receipt) {
        return new Verdict(Outcome.DELIVERED, receipt);
    }

    public static Verdict retry(String error) {
        return new Verdict(Outcome.RETRY, error);
    }

    public static Verdict refused(String error) {
        return new Verdict(Outcome.REFUSED, error);
    }
}
