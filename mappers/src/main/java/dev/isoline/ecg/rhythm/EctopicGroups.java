package dev.isoline.ecg.rhythm;

import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Episode;
import dev.isoline.ecg.summary.Threshold;
import java.util.Optional;

/** Couplets, triplets and runs: ectopic beats of one class in a row, without a break between. */
final class EctopicGroups {

    private final Intervals intervals;
    private final EctopicClass ectopic;
    private final AnalysisSettings settings;
    private final EpisodeLog log;
    private final int shortestRun;
    private long couplets;
    private long triplets;
    private long runs;
    private long runBeats;
    private Optional<Episode> longest = Optional.empty();
    private Optional<Episode> fastest = Optional.empty();

    EctopicGroups(
            Intervals intervals, EctopicClass ectopic, AnalysisSettings settings, EpisodeLog log) {
        this.intervals = intervals;
        this.ectopic = ectopic;
        this.settings = settings;
        this.log = log;
        shortestRun = settings.count(Threshold.RUN_BEATS);
        find();
    }

    private void find() {
        int first = 0;
        for (int i = 0; i < intervals.beats(); i++) {
            boolean last = !isInRowWithNext(i);
            if (last && intervals.kind(i) == ectopic.beat) {
                group(first, i);
            }
            first = last ? i + 1 : first;
        }
    }

    private boolean isInRowWithNext(int i) {
        return i + 1 < intervals.beats()
                && intervals.kind(i) == ectopic.beat
                && intervals.kind(i + 1) == ectopic.beat
                && intervals.isMeasurable(i);
    }

    private void group(int first, int last) {
        int beats = last - first + 1;
        if (beats == 2) {
            couplets++;
            log.add(intervals.episode(ectopic.couplet, first, last));
        }
        if (beats == 3) {
            triplets++;
            log.add(intervals.episode(ectopic.triplet, first, last));
        }
        if (beats >= shortestRun) {
            run(ectopic.named(intervals.episode(ectopic.triplet, first, last), settings));
        }
    }

    private void run(Episode run) {
        runs++;
        runBeats += run.beats();
        log.add(run);
        if (longest.isEmpty() || isLonger(run, longest.get())) {
            longest = Optional.of(run);
        }
        if (fastest.isEmpty() || rate(run) > rate(fastest.get())) {
            fastest = Optional.of(run);
        }
    }

    private static boolean isLonger(Episode run, Episode than) {
        return run.beats() > than.beats()
                || run.beats() == than.beats() && run.duration().compareTo(than.duration()) > 0;
    }

    private static double rate(Episode run) {
        return run.rates().orElseThrow().mean();
    }

    long couplets() {
        return couplets;
    }

    long triplets() {
        return triplets;
    }

    long runs() {
        return runs;
    }

    long runBeats() {
        return runBeats;
    }

    Optional<Episode> longest() {
        return longest;
    }

    Optional<Episode> fastest() {
        return fastest;
    }
}
