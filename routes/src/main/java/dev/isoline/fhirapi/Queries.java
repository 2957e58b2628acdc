package dev.isoline.fhirapi;

/** The part of a conditional URL after the question mark. */
final class Queries {

    private Queries() {}

    /**
     * {@code Patient?identifier=1}, {@code ?identifier=1} and {@code identifier=1} are the same.
     */
    static String of(String url) {
        return url == null ? "" : url.substring(url.indexOf('?') + 1);
    }
}
