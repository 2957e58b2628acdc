package dev.isoline.synth;

/** A part of a recording, in seconds from its start. */
public record Span(double from, double to) {

    boolean holds(double seconds) {
        return seconds >= from && seconds < to;
    }
}
