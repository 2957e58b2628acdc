package dev.isoline.ecgdicom.annotation;

import dev.isoline.ecg.Stretch;
import dev.isoline.ecgdicom.annotation.WaveformAnnotation.Range;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/** Where no lead shows an ECG: pairs of first and last sample in as few items as they fit. */
final class SilentStretches {

    private static final int MOST_PAIRS = Positions.MOST / 2;

    private SilentStretches() {}

    static List<WaveformAnnotation> of(List<Stretch> silent, Stretch object) {
        var pairs =
                silent.stream()
                        .map(stretch -> Positions.within(stretch, object).orElse(null))
                        .filter(Objects::nonNull)
                        .toList();
        var annotations = new ArrayList<WaveformAnnotation>();
        for (int from = 0; from < pairs.size(); from += MOST_PAIRS) {
            var part = pairs.subList(from, Math.min(pairs.size(), from + MOST_PAIRS));
            long[] positions = part.stream().flatMapToLong(Arrays::stream).toArray();
            annotations.add(
                    WaveformAnnotation.of(BeatCode.NO_SIGNAL)
                            .at(part.size() == 1 ? Range.SEGMENT : Range.MULTISEGMENT, positions));
        }
        return annotations;
    }
}
