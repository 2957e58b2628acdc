package dev.isoline.ecgdicom;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.BeatSeries;
import dev.isoline.ecg.DiaryEntry;
import dev.isoline.ecg.RhythmEpisode;
import dev.isoline.ecg.Stretch;
import dev.isoline.ecg.analysis.Findings;
import dev.isoline.ecg.rhythm.BeatTrack.Origin;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Coverage;
import dev.isoline.ecg.summary.Episode;
import dev.isoline.ecg.summary.Episodes;
import dev.isoline.ecg.summary.HeartRates;
import dev.isoline.ecg.summary.MadeSummary;
import dev.isoline.ecg.summary.Summary;
import dev.isoline.ecg.summary.Variability;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Findings put together by hand; nothing is measured. */
public final class MadeFindings {

    public int hz = 200;
    public final BeatSeries beats = new BeatSeries();
    public final List<Stretch> recorded = new ArrayList<>();
    public final List<Stretch> silent = new ArrayList<>();
    public final List<Stretch> flutter = new ArrayList<>();
    public final List<RhythmEpisode> rhythms = new ArrayList<>();
    public final List<DiaryEntry> diary = new ArrayList<>();
    public final List<HeartRates.Interval> pauses = new ArrayList<>();
    public final List<Episode> episodes = new ArrayList<>();
    public Optional<HeartRates.Interval> longestRr = Optional.empty();
    public Optional<HeartRates.Rate> rate = Optional.empty();
    public Variability variability = MadeSummary.TOO_SHORT;
    public boolean classified = true;

    public MadeFindings beat(long sample, Beat.Kind kind) {
        beats.add(sample, kind);
        return this;
    }

    public MadeFindings recorded(long from, long to) {
        recorded.add(new Stretch(from, to));
        return this;
    }

    /** From one sample to another. */
    public HeartRates.Interval interval(long from, long to) {
        return new HeartRates.Interval(time(from), time(to - from));
    }

    public Duration time(long samples) {
        return Duration.ofNanos(samples * 1_000_000_000 / hz);
    }

    private Episodes rhythm() {
        var all = new ArrayList<>(MadeSummary.pauses(pauses).list());
        all.addAll(episodes);
        return new Episodes(all, Map.of());
    }

    public Findings build() {
        Map<Beat.Kind, Long> counts = new EnumMap<>(Beat.Kind.class);
        if (classified) {
            beats.forEach(beat -> counts.merge(beat.kind(), 1L, Long::sum));
        }
        var summary =
                new Summary(
                        new Coverage(
                                Optional.of(MadeRecording.START),
                                Duration.ZERO,
                                Duration.ZERO,
                                hz,
                                List.of(),
                                List.of()),
                        MadeSummary.beats(beats.size(), counts),
                        new HeartRates(rate, List.of(), longestRr),
                        rhythm(),
                        variability,
                        AnalysisSettings.DEFAULT,
                        List.of());
        var origin = classified ? Origin.REFERENCE : Origin.NOBODY;
        return new Findings(summary, beats, origin, recorded, silent, flutter, rhythms, diary);
    }
}
