package dev.isoline.order;

/**
 * What is wrong, and where; each edge renders it in its own words (ERR, OperationOutcome, status).
 *
 * @param kind what kind of fault
 * @param severity how bad
 * @param location where, in the words of the protocol it came by: {@code PID-8}, {@code
 *     ServiceRequest.code}, {@code (5400,0100)}; empty when it concerns the whole
 * @param text one sentence without patient detail
 */
public record Problem(Kind kind, Severity severity, String location, String text) {

    /** Kinds of fault; the edges map them to table 0357 and to issue-type. */
    public enum Kind {
        SEQUENCE,
        REQUIRED,
        DATA_TYPE,
        VALUE,
        UNSUPPORTED_MESSAGE,
        UNSUPPORTED_EVENT,
        UNSUPPORTED_PROCESSING_ID,
        UNSUPPORTED_VERSION,
        UNSUPPORTED_CHARSET,
        UNKNOWN_KEY,
        DUPLICATE_KEY,
        CONFLICT,
        INTERNAL
    }

    /** HL7 table 0516 and FHIR issue-severity in one. */
    public enum Severity {
        ERROR,
        WARNING,
        INFORMATION
    }

    public static Problem error(Kind kind, String location, String text) {
        return new Problem(kind, Severity.ERROR, location, text);
    }

    public static Problem warning(Kind kind, String location, String text) {
        return new Problem(kind, Severity.WARNING, location, text);
    }

    public boolean isError() {
        return severity == Severity.ERROR;
    }
}
