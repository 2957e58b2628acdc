package dev.isoline.ecg.analysis;

import java.time.Duration;

/**
 * Thresholds of the analysis.
 *
 * @param pause shortest interval reported as a pause
 * @param rateBeats number of intervals a minimum or maximum rate is averaged over
 */
public record AnalysisSettings(Duration pause, int rateBeats) {

    /** Pause 2.0 s and rate over 8 beats: common practice, no source. */
    public static final AnalysisSettings DEFAULT = new AnalysisSettings(Duration.ofSeconds(2), 8);
}
