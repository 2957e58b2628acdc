package dev.isoline.ecgdicom.iod;

import dev.isoline.ecg.Faults;
import dev.isoline.ecg.RecordingHeader;
import dev.isoline.ecg.Stretch;
import dev.isoline.ecg.analysis.Findings;
import dev.isoline.ecgdicom.annotation.FindingsToAnnotations;
import dev.isoline.ecgdicom.annotation.WaveformAnnotation;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Annotations stand before the samples in an object, so they are known before those are read or not
 * written at all.
 */
final class Annotator {

    private final List<String> notes;
    private final List<Stretch> recorded;
    private final Optional<Function<Stretch, List<WaveformAnnotation>>> annotations;

    private Annotator(
            List<String> notes,
            List<Stretch> recorded,
            Optional<Function<Stretch, List<WaveformAnnotation>>> annotations) {
        this.notes = notes;
        this.recorded = recorded;
        this.annotations = annotations;
    }

    /** Of a recording nobody has analysed. */
    static Annotator of(RecordingHeader header) {
        return new Annotator(header.notes(), List.of(), Optional.empty());
    }

    static Annotator of(Findings findings) {
        return new Annotator(
                findings.summary().notes(),
                findings.recorded(),
                Optional.of(new FindingsToAnnotations(findings)::of));
    }

    boolean isKnown() {
        return annotations.isPresent();
    }

    /** The samples of an object that begins at the first and has so many at most. */
    Stretch extent(long first, long most) {
        return recorded.stream()
                .filter(stretch -> stretch.from() <= first && first < stretch.to())
                .findFirst()
                .map(stretch -> new Stretch(first, Math.min(stretch.to(), first + most)))
                .orElse(new Stretch(first, first));
    }

    /** What was found, and that a short or damaged recording is one. */
    List<WaveformAnnotation> of(Stretch object) {
        var all = new ArrayList<WaveformAnnotation>();
        for (String note : notes) {
            if (Faults.isSalvaged(note)) {
                all.add(WaveformAnnotation.ofText(note));
            }
        }
        all.addAll(annotations.map(of -> of.apply(object)).orElse(List.of()));
        return all;
    }
}
