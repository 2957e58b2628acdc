package dev.isoline.ecg;

/**
 * What patient or recorder noted at a time of the recording.
 *
 * @param sample position on the recording's time axis
 * @param samples how long it lasted; 0 for a moment, or where nobody said
 * @param text as it was noted
 */
public record DiaryEntry(long sample, long samples, String text) {}
