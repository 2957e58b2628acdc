package dev.isoline.hl7v2fhir;

/**
 * A value the mapping could not carry as it stood.
 *
 * @param field where it was, such as {@code PID-8}
 * @param text what became of it and why, without the value where that is patient detail
 */
public record Note(String field, String text) {}
