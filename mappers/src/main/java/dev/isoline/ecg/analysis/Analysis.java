package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.rhythm.BeatMeasures;
import dev.isoline.ecg.rhythm.BeatTrack;
import dev.isoline.ecg.rhythm.BeatTrack.Origin;
import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.Coverage;
import dev.isoline.ecg.summary.Summary;
import java.io.IOException;
import java.time.Duration;
import java.util.List;

/**
 * Measures a recording (definitions: docs/analysis.md). Where the recording brings reference beats,
 * they are the beats of the summary; else those the program finds.
 */
public final class Analysis {

    private final Recording recording;
    private final Detection detection;
    private final AnalysisSettings settings;
    private final BeatTrack track;

    private Analysis(Recording recording, Detection detection, AnalysisSettings settings)
            throws IOException {
        this.recording = recording;
        this.detection = detection;
        this.settings = settings;
        var timeline = detection.timeline();
        var reference = within(recording.referenceBeats(), timeline.end());
        track =
                new BeatTrack(
                        reference.isEmpty() ? detection.beats() : reference,
                        reference.isEmpty() ? found(detection.beats()) : Origin.REFERENCE,
                        timeline.hz(),
                        timeline.recordedParts(),
                        timeline.recordedStretches(detection.unusableSeconds()),
                        recording.flutter());
    }

    /** Beats the program found have their classes from the program, if any. */
    private static Origin found(List<Beat> beats) {
        return beats.stream().allMatch(beat -> beat.kind() == Beat.Kind.UNCLASSIFIED)
                ? Origin.NOBODY
                : Origin.PROGRAM;
    }

    /** Reads the recording to its end and measures it. */
    public static Summary summarise(Recording recording, AnalysisSettings settings)
            throws IOException {
        return summarise(recording, Detection.in(recording), settings);
    }

    /** Measures a recording that was read for its beats. */
    public static Summary summarise(
            Recording recording, Detection detection, AnalysisSettings settings)
            throws IOException {
        return new Analysis(recording, detection, settings).summary();
    }

    /** Reads the recording to its end; the measures, and where on the time axis they come from. */
    public static Findings findings(Recording recording, AnalysisSettings settings)
            throws IOException {
        return new Analysis(recording, Detection.in(recording), settings).findings();
    }

    /** Beats the program finds, whatever reference the recording brings. */
    public static List<Beat> detect(Recording recording) throws IOException {
        return Detection.in(recording).beats();
    }

    private static List<Beat> within(List<Beat> beats, long end) {
        int count = beats.size();
        while (count > 0 && beats.get(count - 1).sample() >= end) {
            count--;
        }
        return beats.subList(0, count);
    }

    private Summary summary() {
        var measures = new BeatMeasures(track, settings);
        var coverage = coverage();
        return new Summary(
                coverage,
                measures.beats(),
                measures.rates(),
                measures.episodes(),
                measures.variability(),
                settings,
                new AnalysisNotes(recording, detection, settings).of(track, coverage));
    }

    private Coverage coverage() {
        var timeline = detection.timeline();
        long recorded = timeline.recorded();
        long unusable = timeline.recordedIn(detection.unusableSeconds());
        return new Coverage(
                recording.header().start(),
                time(recorded),
                time(recorded - unusable),
                track.hz(),
                detection.leads(),
                detection.quality());
    }

    private Duration time(long samples) {
        return Duration.ofNanos(Math.round(samples * 1e9 / track.hz()));
    }

    private Findings findings() throws IOException {
        return new Findings(
                summary(),
                track.beats(),
                track.origin(),
                track.recorded(),
                track.unusable(),
                recording.flutter(),
                recording.rhythms(),
                recording.diary());
    }
}
