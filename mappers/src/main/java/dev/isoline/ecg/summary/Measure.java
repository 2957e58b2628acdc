package dev.isoline.ecg.summary;

import java.util.Optional;

/**
 * A measured value, or the reason why there is none: one of the two is there.
 *
 * @param value in the unit its owner names
 * @param refusal one sentence
 */
public record Measure(Optional<Double> value, Optional<String> refusal) {

    public static Measure of(double value) {
        return new Measure(Optional.of(value), Optional.empty());
    }

    public static Measure refused(String reason) {
        return new Measure(Optional.empty(), Optional.of(reason));
    }
}
