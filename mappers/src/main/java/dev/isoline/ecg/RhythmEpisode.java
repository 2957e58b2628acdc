package dev.isoline.ecg;

/** A stretch in which the heart kept one rhythm, as whoever marked the beats named it. */
public record RhythmEpisode(Stretch stretch, Rhythm rhythm) {}
