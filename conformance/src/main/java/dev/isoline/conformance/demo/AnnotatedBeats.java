package dev.isoline.conformance.demo;

import dev.isoline.conformance.validator.Waveform;
import dev.isoline.synth.BeatKind;
import dev.isoline.synth.TrueBeat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;

/**
 * The annotations of a DICOM object mark the beats that were synthesised, as pydicom reads them.
 */
final class AnnotatedBeats {

    /** CID 3335 ECG Annotation, PS3.16. */
    private static final Map<BeatKind, String> CODES =
            Map.of(
                    BeatKind.NORMAL, "MDC 10:8208",
                    BeatKind.VENTRICULAR, "MDC 10:8336",
                    BeatKind.SUPRAVENTRICULAR, "MDC 10:8256");

    /** Whatever class a program gives what it found, fusion and none included; or an R wave. */
    private static final List<String> FOUND =
            List.of(
                    "MDC 10:8208",
                    "MDC 10:8256",
                    "MDC 10:8336",
                    "MDC 10:8352",
                    "MDC 10:8736",
                    "MDC 10:576");

    /** A beat found this near is the beat (ANSI/AAMI EC57: 150 ms). */
    private static final double NEAR_SECONDS = 0.15;

    /** Share of beats that may be missed, and of those found that may be none. */
    private static final double MISSED = 0.01;

    private final Story story;

    AnnotatedBeats(Story story) {
        this.story = story;
    }

    void compare(DemoRecording recording, Waveform waveform) {
        if (recording.classified()) {
            exactly(recording, waveform);
        } else {
            nearly(recording, waveform);
        }
    }

    /** Classes that come with the recording keep their sample. */
    private void exactly(DemoRecording recording, Waveform waveform) {
        CODES.forEach(
                (kind, code) ->
                        story.expect(
                                waveform.points()
                                        .getOrDefault(code, List.of())
                                        .equals(positions(recording.beats(), kind)),
                                "the %s beats of %s are not annotated where they are",
                                kind.name().toLowerCase(Locale.ROOT),
                                recording.order()));
        story.add(
                "%s: all %d beats are annotated at their sample, by class",
                recording.order(), recording.beats().size());
    }

    private static List<Long> positions(List<TrueBeat> beats, BeatKind kind) {
        return beats.stream().filter(b -> b.kind() == kind).map(b -> b.sample() + 1).toList();
    }

    private void nearly(DemoRecording recording, Waveform waveform) {
        var found = new TreeSet<Long>();
        FOUND.forEach(code -> found.addAll(waveform.points().getOrDefault(code, List.of())));
        var beats = new TreeSet<>(recording.beats().stream().map(b -> b.sample() + 1).toList());
        long near = Math.round(NEAR_SECONDS * waveform.hz());
        long missed = beats.stream().filter(beat -> !isNear(beat, found, near)).count();
        long wrong = found.stream().filter(beat -> !isNear(beat, beats, near)).count();
        story.expect(
                missed <= MISSED * beats.size() && wrong <= MISSED * beats.size(),
                "of %d beats of %s %d are not annotated, and %d annotations mark none",
                beats.size(),
                recording.order(),
                missed,
                wrong);
        story.add(
                "%s: %d of %d beats are annotated within 150 ms, %d annotations mark none",
                recording.order(), beats.size() - missed, beats.size(), wrong);
    }

    private static boolean isNear(Long position, TreeSet<Long> others, long near) {
        Long before = others.floor(position);
        Long after = others.ceiling(position);
        return before != null && position - before <= near
                || after != null && after - position <= near;
    }
}
