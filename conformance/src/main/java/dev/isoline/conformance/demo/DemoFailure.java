package dev.isoline.conformance.demo;

/** The story cannot go on; the message says why in one sentence. */
public final class DemoFailure extends Exception {

    private static final long serialVersionUID = 1;

    DemoFailure(String message) {
        super(message);
    }

    DemoFailure(String message, Exception cause) {
        super(message, cause);
    }
}
