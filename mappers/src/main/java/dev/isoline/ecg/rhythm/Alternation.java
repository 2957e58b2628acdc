package dev.isoline.ecg.rhythm;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.summary.Ectopy.Pattern;
import dev.isoline.ecg.summary.EpisodeKind;

/**
 * Bigeminy and trigeminy: single ectopic beats with one or with two normal beats between each and
 * the next, so many times over. An episode reaches from its first ectopic beat to its last.
 */
final class Alternation {

    private final Intervals intervals;
    private final Beat.Kind ectopic;
    private final int period;

    /**
     * @param period beats from one ectopic beat to the next: 2 in bigeminy, 3 in trigeminy
     */
    Alternation(Intervals intervals, Beat.Kind ectopic, int period) {
        this.intervals = intervals;
        this.ectopic = ectopic;
        this.period = period;
    }

    /**
     * @param cycles least number of ectopic beats in an episode
     */
    Pattern find(EpisodeKind kind, int cycles, EpisodeLog log) {
        long episodes = 0;
        long beats = 0;
        for (int i = 0; i < intervals.beats(); i++) {
            int first = i;
            while (returnsAfter(i)) {
                i += period;
            }
            int count = (i - first) / period + 1;
            if (count >= cycles) {
                episodes++;
                beats += count;
                log.add(intervals.episode(kind, first, i));
            }
        }
        return new Pattern(episodes, beats);
    }

    private boolean returnsAfter(int i) {
        if (i + period >= intervals.beats() || intervals.kind(i) != ectopic) {
            return false;
        }
        for (int j = i; j < i + period; j++) {
            if (!intervals.isMeasurable(j) || j > i && intervals.kind(j) != Beat.Kind.N) {
                return false;
            }
        }
        return intervals.kind(i + period) == ectopic;
    }
}
