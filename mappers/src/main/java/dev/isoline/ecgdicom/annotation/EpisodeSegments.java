package dev.isoline.ecgdicom.annotation;

import dev.isoline.ecg.Stretch;
import dev.isoline.ecg.summary.Episode;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.Summary;
import dev.isoline.ecgdicom.OrderContext.Code;
import dev.isoline.ecgdicom.annotation.WaveformAnnotation.Range;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/** Episodes the program found, from their first beat to their last, cut at the object's edges. */
final class EpisodeSegments {

    private final Summary summary;

    EpisodeSegments(Summary summary) {
        this.summary = summary;
    }

    List<WaveformAnnotation> of(Stretch object) {
        var annotations = new ArrayList<WaveformAnnotation>();
        for (var kind : EpisodeKind.values()) {
            EpisodeCode.of(kind).ifPresent(code -> annotations.addAll(of(kind, code, object)));
        }
        return annotations;
    }

    private List<WaveformAnnotation> of(EpisodeKind kind, Code code, Stretch object) {
        return summary.rhythm().foremost(kind, Measures.MOST_EPISODES).stream()
                .flatMap(episode -> Positions.within(beats(episode), object).stream())
                .map(ends -> WaveformAnnotation.of(code).at(Range.SEGMENT, ends))
                .toList();
    }

    private Stretch beats(Episode episode) {
        return new Stretch(sample(episode.start()), sample(episode.end()) + 1);
    }

    private long sample(Duration offset) {
        return Math.round(offset.toNanos() * summary.coverage().hz() / 1e9);
    }
}
