package dev.isoline.synth;

/**
 * A beat whose place is known because we put it there.
 *
 * @param sample index of the R peak
 */
public record TrueBeat(long sample, BeatKind kind) {}
