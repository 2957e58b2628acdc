package dev.isoline.ecg.rhythm;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.BeatCounts;
import dev.isoline.ecg.summary.Ectopy;
import dev.isoline.ecg.summary.Ectopy.Pattern;
import dev.isoline.ecg.summary.EpisodeKind;
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
    private final EpisodeLog log;
    private final Map<EctopicClass, Ectopy> ectopy = new EnumMap<>(EctopicClass.class);

    public BeatMeasures(BeatTrack track, AnalysisSettings settings) {
        this.track = track;
        this.settings = settings;
        intervals = new Intervals(track);
        hours = new Hours(track);
        log = new EpisodeLog(hours.analysable());
        find();
    }

    public BeatCounts beats() {
        return new BeatCounts(
                track.beats().size(),
                classified(),
                Optional.ofNullable(ectopy.get(EctopicClass.VENTRICULAR)),
                Optional.ofNullable(ectopy.get(EctopicClass.SUPRAVENTRICULAR)));
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
        return log.episodes();
    }

    private void find() {
        Pauses.find(intervals, settings, log);
        RateEpisodes.find(intervals, settings, log);
        if (track.classified()) {
            AtrialFibrillation.find(intervals, settings, log);
            for (var each : EctopicClass.values()) {
                ectopy.put(each, ectopy(each));
            }
        }
    }

    private Ectopy ectopy(EctopicClass ectopic) {
        ectopic.lookFor(log);
        var groups = new EctopicGroups(intervals, ectopic, settings, log);
        long beats = hours.beats(ectopic.beat);
        return new Ectopy(
                beats,
                beats == 0 ? 0 : 100.0 * beats / track.beats().size(),
                hours.perHour(beats),
                hours.most(ectopic.beat),
                groups.couplets(),
                groups.triplets(),
                groups.runs(),
                groups.runBeats(),
                groups.longest(),
                groups.fastest(),
                pattern(ectopic, 2, ectopic.bigeminy, Threshold.BIGEMINY_CYCLES),
                pattern(ectopic, 3, ectopic.trigeminy, Threshold.TRIGEMINY_CYCLES));
    }

    private Pattern pattern(EctopicClass ectopic, int period, EpisodeKind kind, Threshold cycles) {
        return new Alternation(intervals, ectopic.beat, period)
                .find(kind, settings.count(cycles), log);
    }

    public Variability variability() {
        return new NormalIntervals(intervals, track.origin(), settings).variability();
    }
}
