package dev.isoline.ecg.rhythm;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.BeatCounts;
import dev.isoline.ecg.summary.Episodes;
import dev.isoline.ecg.summary.HeartRates;
import dev.isoline.ecg.summary.Threshold;
import dev.isoline.ecg.summary.Variability;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/** All that is measured from beats alone (definitions: docs/analysis.md). */
public final class BeatMeasures {

    private final BeatTrack track;
    private final AnalysisSettings settings;
    private final Intervals intervals;
    private final Hours hours;

    public BeatMeasures(BeatTrack track, AnalysisSettings settings) {
        this.track = track;
        this.settings = settings;
        intervals = new Intervals(track);
        hours = new Hours(track);
    }

    public BeatCounts beats() {
        return new BeatCounts(
                track.beats().size(), classified(), Optional.empty(), Optional.empty());
    }

    /** Every class has an entry as soon as somebody classified. */
    private Map<Beat.Kind, Long> classified() {
        var counts = new EnumMap<Beat.Kind, Long>(Beat.Kind.class);
        if (track.classified()) {
            for (var kind : Beat.Kind.values()) {
                if (kind != Beat.Kind.UNCLASSIFIED) {
                    counts.put(kind, 0L);
                }
            }
            track.beats().forEach(beat -> counts.merge(beat.kind(), 1L, Long::sum));
        }
        return Collections.unmodifiableMap(counts);
    }

    public HeartRates rates() {
        var rates = new Rates(intervals, settings.count(Threshold.RATE_BEATS));
        return new HeartRates(rates.whole(), hours.entries(rates), rates.longest());
    }

    public Episodes episodes() {
        var log = new EpisodeLog(hours.analysable());
        Pauses.find(intervals, settings, log);
        return log.episodes();
    }

    public Variability variability() {
        return new NormalIntervals(intervals, track.origin(), settings).variability();
    }
}
