package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Recording;
import java.io.IOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Measures a recording (definitions: docs/analysis.md). Where the recording brings reference beats,
 * they are the beats of the summary; else those the program finds.
 */
public final class Analysis {

    private final Recording recording;
    private final Detection detection;
    private final AnalysisSettings settings;
    private final List<Beat> reference;
    private final List<Beat> beats;
    private final Intervals intervals;

    private Analysis(Recording recording, Detection detection, AnalysisSettings settings)
            throws IOException {
        this.recording = recording;
        this.detection = detection;
        this.settings = settings;
        long end = detection.timeline().end();
        reference = within(recording.referenceBeats(), end);
        beats = reference.isEmpty() ? detection.beats() : reference;
        intervals = new Intervals(beats, detection, recording.flutter());
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
        var timeline = detection.timeline();
        var rates = new Rates(intervals, settings.rateBeats());
        long unusable = timeline.recordedIn(detection.unusableSeconds());
        return new Summary(
                recording.header().start(),
                intervals.time(timeline.recorded()),
                intervals.time(timeline.recorded() - unusable),
                timeline.hz(),
                detection.leads(),
                beats.size(),
                classified(),
                rates.whole(),
                rates.hours(intervals.time(timeline.end())),
                longest(),
                pauses(),
                new NormalIntervals(intervals, !reference.isEmpty()).variability(),
                settings,
                notes());
    }

    private Findings findings() throws IOException {
        var timeline = detection.timeline();
        return new Findings(
                summary(),
                beats,
                timeline.recordedParts(),
                timeline.recordedStretches(detection.unusableSeconds()),
                recording.flutter(),
                recording.rhythms(),
                recording.diary());
    }

    private Map<Beat.Kind, Long> classified() {
        var counts = new EnumMap<Beat.Kind, Long>(Beat.Kind.class);
        for (var kind : Beat.Kind.values()) {
            if (kind != Beat.Kind.UNCLASSIFIED && !reference.isEmpty()) {
                counts.put(kind, 0L);
            }
        }
        reference.forEach(beat -> counts.merge(beat.kind(), 1L, Long::sum));
        return counts;
    }

    private Optional<Summary.Interval> longest() {
        int longest = -1;
        double most = 0;
        for (int i = 0; i < intervals.count(); i++) {
            if (intervals.milliseconds(i) > most) {
                most = intervals.milliseconds(i);
                longest = i;
            }
        }
        return longest < 0 ? Optional.empty() : Optional.of(interval(longest));
    }

    private List<Summary.Interval> pauses() {
        double shortest = settings.pause().toNanos() / 1e6;
        var pauses = new ArrayList<Summary.Interval>();
        for (int i = 0; i < intervals.count(); i++) {
            if (intervals.milliseconds(i) >= shortest) {
                pauses.add(interval(i));
            }
        }
        return List.copyOf(pauses);
    }

    private Summary.Interval interval(int i) {
        return new Summary.Interval(
                intervals.at(i), Duration.ofNanos(Math.round(intervals.milliseconds(i) * 1e6)));
    }

    private List<String> notes() {
        var notes = new ArrayList<>(recording.header().notes());
        if (detection.timeline().gaps() > 0) {
            notes.add("Gaps in the recording: " + detection.timeline().gaps() + ".");
        }
        if (reference.isEmpty()) {
            notes.add(NormalIntervals.RULE);
        } else {
            notes.add(
                    "Beats and their classes are those the recording brings; the program itself"
                            + " found "
                            + detection.beats().size()
                            + " beats.");
        }
        return List.copyOf(notes);
    }
}
