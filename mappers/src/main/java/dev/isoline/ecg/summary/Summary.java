package dev.isoline.ecg.summary;

import java.util.List;

/**
 * What the analysis found in one recording. Computed by a program: preliminary until a clinician
 * confirms it. Times are offsets from the start of the recording.
 *
 * @param coverage what was recorded, and how much of it could be measured
 * @param beats counted by class
 * @param rates heart rates of the whole recording and of each hour
 * @param rhythm pauses, runs, fibrillation and other episodes
 * @param variability of the intervals between normal beats
 * @param settings the thresholds used
 * @param notes what a reader has to know, one sentence each
 */
public record Summary(
        Coverage coverage,
        BeatCounts beats,
        HeartRates rates,
        Episodes rhythm,
        Variability variability,
        AnalysisSettings settings,
        List<String> notes) {}
