package dev.isoline.ecg;

/** A part of a recording, in samples: from the first up to, and without, the last. */
public record Stretch(long from, long to) {

    public long length() {
        return to - from;
    }
}
