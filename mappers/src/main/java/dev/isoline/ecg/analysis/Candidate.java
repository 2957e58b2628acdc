package dev.isoline.ecg.analysis;

/**
 * A place where the filtered ECG peaks and no higher peak is within the refractory period.
 *
 * @param sample position of the R peak
 * @param height of the filtered ECG
 * @param slope steepest in it
 * @param balance of rise and fall, 0 to 1; a step of the baseline has little
 */
record Candidate(long sample, double height, double slope, double balance) {}
