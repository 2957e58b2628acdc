package dev.isoline.ecgfhir;

import static dev.isoline.ecgfhir.AmbulatoryEcgMetric.*;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.summary.BeatCounts;
import java.util.Optional;
import org.hl7.fhir.r4.model.Observation;

/** Beats by class; the ectopic ones have panels of their own. */
final class BeatPanel {

    private BeatPanel() {}

    static Observation of(BeatCounts beats, ObservationFrame frame) {
        Panel panel =
                frame.panel(BEAT_PANEL)
                        .with(BEATS, beats.total(), 0)
                        .with(NORMAL_BEATS, count(beats, Beat.Kind.N), 0, Absence.UNCLASSIFIED)
                        .with(FUSION_BEATS, count(beats, Beat.Kind.F), 0, Absence.UNCLASSIFIED)
                        .with(OTHER_BEATS, count(beats, Beat.Kind.Q), 0, Absence.UNCLASSIFIED);
        if (beats.classified().containsKey(Beat.Kind.UNCLASSIFIED)) {
            panel.with(UNCLASSIFIED_BEATS, beats.classified().get(Beat.Kind.UNCLASSIFIED), 0);
        }
        return panel.observation();
    }

    /** Nobody classified the beats: empty. They were and there was none: zero. */
    static Optional<Double> count(BeatCounts beats, Beat.Kind kind) {
        var counts = beats.classified();
        return counts.isEmpty()
                ? Optional.empty()
                : Optional.of(counts.getOrDefault(kind, 0L).doubleValue());
    }
}
