package dev.isoline.ecgdicom.annotation;

import dev.isoline.ecg.DiaryEntry;
import dev.isoline.ecg.RhythmEpisode;
import dev.isoline.ecg.Stretch;
import dev.isoline.ecg.analysis.Findings;
import dev.isoline.ecg.rhythm.BeatTrack.Origin;
import dev.isoline.ecgdicom.annotation.WaveformAnnotation.Range;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Findings to the annotations of one object: what lies within its samples, cut at its edges. What
 * is written of what: docs/mappings/recording-to-dicom.md.
 */
public final class FindingsToAnnotations {

    private static final String BROUGHT =
            "Beats, their classes and rhythms of this annotation group are those the recording"
                    + " brings.";
    private static final String COMPUTED =
            "What is in this annotation group was computed by a program: preliminary until a"
                    + " clinician confirms it.";
    private static final String UNCLASSIFIED = " Nobody classified the beats.";
    private static final String FLUTTER =
            "Ventricular flutter or fibrillation, as marked in the recording.";

    /** Characters of VR ST, PS3.5 table 6.2-1. */
    private static final int LONGEST_TEXT = 1024;

    private final Findings findings;
    private final BeatPositions beats;
    private final EpisodeSegments episodes;
    private final Measures measures;

    public FindingsToAnnotations(Findings findings) {
        this.findings = findings;
        this.beats = new BeatPositions(findings.beats());
        this.episodes = new EpisodeSegments(findings.summary());
        this.measures = new Measures(findings, beats);
    }

    /** Annotations of an object that holds these samples of the recording. */
    public List<WaveformAnnotation> of(Stretch object) {
        var annotations = new ArrayList<WaveformAnnotation>();
        brought(object).forEach(a -> annotations.add(a.in(WaveformAnnotation.BROUGHT)));
        computed(object).forEach(a -> annotations.add(a.in(WaveformAnnotation.COMPUTED)));
        findings.diary().forEach(entry -> diary(entry, object).ifPresent(annotations::add));
        return List.copyOf(annotations);
    }

    private List<WaveformAnnotation> brought(Stretch object) {
        var annotations = new ArrayList<WaveformAnnotation>();
        if (isReference()) {
            annotations.add(WaveformAnnotation.ofText(BROUGHT));
            annotations.addAll(beats.of(object));
        }
        findings.rhythms().forEach(episode -> rhythm(episode, object).ifPresent(annotations::add));
        for (Stretch stretch : findings.flutter()) {
            segment(WaveformAnnotation.ofText(FLUTTER), stretch, object)
                    .ifPresent(annotations::add);
        }
        return annotations;
    }

    private List<WaveformAnnotation> computed(Stretch object) {
        var annotations = new ArrayList<WaveformAnnotation>();
        boolean classified = findings.origin() != Origin.NOBODY;
        annotations.add(WaveformAnnotation.ofText(classified ? COMPUTED : COMPUTED + UNCLASSIFIED));
        if (!isReference()) {
            annotations.addAll(beats.of(object));
        }
        annotations.addAll(episodes.of(object));
        annotations.addAll(SilentStretches.of(findings.silent(), object));
        annotations.addAll(measures.of(object));
        for (var note : findings.summary().notes()) {
            annotations.add(WaveformAnnotation.ofText(text(note)));
        }
        return annotations;
    }

    private boolean isReference() {
        return findings.origin() == Origin.REFERENCE;
    }

    private static Optional<WaveformAnnotation> rhythm(RhythmEpisode episode, Stretch object) {
        return RhythmCode.of(episode.rhythm())
                .map(WaveformAnnotation::of)
                .flatMap(annotation -> segment(annotation, episode.stretch(), object));
    }

    private static Optional<WaveformAnnotation> segment(
            WaveformAnnotation annotation, Stretch stretch, Stretch object) {
        return Positions.within(stretch, object)
                .map(ends -> annotation.at(ends[0] == ends[1] ? Range.POINT : Range.SEGMENT, ends));
    }

    /** A noted moment is a point; what lasted is a segment. */
    private static Optional<WaveformAnnotation> diary(DiaryEntry entry, Stretch object) {
        var annotation = WaveformAnnotation.ofText(text(entry.text()));
        if (annotation.text().isEmpty()) {
            return Optional.empty();
        }
        if (entry.samples() > 1) {
            var stretch = new Stretch(entry.sample(), entry.sample() + entry.samples());
            return segment(annotation, stretch, object);
        }
        return Positions.of(entry.sample(), object).map(at -> annotation.at(Range.POINT, at));
    }

    private static String text(String noted) {
        String clean = noted.replaceAll("[\\p{Cntrl}\\\\]", " ").strip();
        int longest = Math.min(LONGEST_TEXT, clean.codePointCount(0, clean.length()));
        return clean.substring(0, clean.offsetByCodePoints(0, longest)).strip();
    }
}
