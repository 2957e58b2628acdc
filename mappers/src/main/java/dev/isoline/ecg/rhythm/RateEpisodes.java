package dev.isoline.ecg.rhythm;

import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.Threshold;
import java.time.Duration;
import java.util.function.DoublePredicate;

/**
 * Bradycardia and tachycardia: stretches in which the rate, averaged over so many successive
 * intervals, stays beyond a limit for long enough.
 */
final class RateEpisodes {

    private final Intervals intervals;
    private final int window;
    private final Duration shortest;
    private final EpisodeLog log;

    private RateEpisodes(Intervals intervals, AnalysisSettings settings, EpisodeLog log) {
        this.intervals = intervals;
        this.log = log;
        window = settings.count(Threshold.RATE_BEATS);
        shortest = settings.duration(Threshold.RATE_EPISODE);
    }

    static void find(Intervals intervals, AnalysisSettings settings, EpisodeLog log) {
        log.lookFor(EpisodeKind.BRADYCARDIA, EpisodeKind.TACHYCARDIA);
        var episodes = new RateEpisodes(intervals, settings, log);
        double slow = settings.value(Threshold.BRADYCARDIA_RATE);
        double fast = settings.value(Threshold.TACHYCARDIA_RATE);
        episodes.find(EpisodeKind.BRADYCARDIA, rate -> rate < slow);
        episodes.find(EpisodeKind.TACHYCARDIA, rate -> rate > fast);
    }

    private void find(EpisodeKind kind, DoublePredicate beyond) {
        int first = -1;
        int last = -1;
        for (int i = 0; i + window <= intervals.count(); i++) {
            if (beyond.test(intervals.rate(i, i + window))) {
                if (i > last) {
                    close(kind, first, last);
                    first = i;
                }
                last = i + window;
            }
        }
        close(kind, first, last);
    }

    private void close(EpisodeKind kind, int first, int last) {
        if (first >= 0 && intervals.between(first, last).compareTo(shortest) >= 0) {
            log.add(intervals.averaged(kind, first, last, window));
        }
    }
}
