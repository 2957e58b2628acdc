package dev.isoline.conformance.validator;

/**
 * One thing a reference implementation says.
 *
 * @param place as it names it: a FHIRPath, a segment and field, a tag; empty when it names none
 */
public record Finding(Severity severity, String place, String text) {

    /** Only an error is a failure. */
    public enum Severity {
        ERROR,
        WARNING
    }

    static Finding error(String place, String text) {
        return new Finding(Severity.ERROR, place, text);
    }

    static Finding warning(String place, String text) {
        return new Finding(Severity.WARNING, place, text);
    }

    public boolean isError() {
        return severity == Severity.ERROR;
    }
}
