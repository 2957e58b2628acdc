package dev.isoline.ecg.analysis;

/**
 * A place where the filtered ECG peaks and no higher peak is within the refractory period.
 *
 * @param step where it is
 * @param height of the filtered ECG over all leads: 0 at the noise, 1 at the QRS complexes before
 * @param slope steepest in it, 1 in the QRS complexes before
 * @param balance of rise and fall, 0 to 1; a step of the baseline has little
 */
record Candidate(long step, double height, double slope, double balance) {}
