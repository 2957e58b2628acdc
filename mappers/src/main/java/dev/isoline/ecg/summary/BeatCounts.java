package dev.isoline.ecg.summary;

import dev.isoline.ecg.Beat;
import java.util.Map;
import java.util.Optional;

/**
 * Beats of the recording.
 *
 * @param total of every class
 * @param classified by class, in the order of {@link Beat.Kind}; empty when nobody classified them
 * @param ventricular ectopy; empty when nobody classified the beats
 * @param supraventricular ectopy; empty when nobody classified the beats
 */
public record BeatCounts(
        long total,
        Map<Beat.Kind, Long> classified,
        Optional<Ectopy> ventricular,
        Optional<Ectopy> supraventricular) {}
