package dev.isoline.ecg.rhythm;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.BeatSeries;
import dev.isoline.ecg.Stretch;
import dev.isoline.ecg.rhythm.BeatTrack.Origin;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Episode;
import dev.isoline.ecg.summary.EpisodeKind;
import java.util.ArrayList;
import java.util.List;

/** Beats put down one after the other, at 1000 samples a second: a sample is a millisecond. */
final class MadeTrack {

    private final BeatSeries beats = new BeatSeries();
    private final List<Stretch> recorded = new ArrayList<>();
    private final List<Stretch> unusable = new ArrayList<>();
    private final List<Stretch> flutter = new ArrayList<>();
    Origin origin = Origin.PROGRAM;
    private long from;
    private long at;

    /** Each beat of the text follows the one before after so many milliseconds. */
    MadeTrack beats(String kinds, long milliseconds) {
        kinds.chars().forEach(kind -> beat((char) kind, milliseconds));
        return this;
    }

    MadeTrack beat(char kind, long milliseconds) {
        at += milliseconds;
        beats.add(at, Beat.Kind.valueOf(String.valueOf(kind)));
        return this;
    }

    /** Nothing recorded for so long. */
    MadeTrack gap(long milliseconds) {
        recorded.add(new Stretch(from, at + 1));
        at += milliseconds;
        from = at;
        return this;
    }

    MadeTrack unusable(long milliseconds) {
        unusable.add(new Stretch(at + 1, at + milliseconds));
        at += milliseconds;
        return this;
    }

    MadeTrack flutter(long milliseconds) {
        flutter.add(new Stretch(at + 1, at + milliseconds));
        at += milliseconds;
        return this;
    }

    BeatTrack track() {
        var all = new ArrayList<>(recorded);
        all.add(new Stretch(from, at + 1));
        return new BeatTrack(beats, origin, 1000, all, unusable, flutter);
    }

    BeatMeasures measures() {
        return measures(AnalysisSettings.DEFAULT);
    }

    BeatMeasures measures(AnalysisSettings settings) {
        return new BeatMeasures(track(), settings);
    }

    List<Episode> episodes(EpisodeKind kind) {
        return measures().episodes().of(kind);
    }
}
