package dev.isoline.ecg.rhythm;

import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.Threshold;

/** Intervals long enough to be reported. */
final class Pauses {

    private Pauses() {}

    static void find(Intervals intervals, AnalysisSettings settings, EpisodeLog log) {
        log.lookFor(EpisodeKind.PAUSE);
        double shortest = settings.value(Threshold.PAUSE) * 1000;
        for (int i = 0; i < intervals.count(); i++) {
            if (intervals.milliseconds(i) >= shortest) {
                log.add(intervals.episode(EpisodeKind.PAUSE, i, i + 1));
            }
        }
    }
}
