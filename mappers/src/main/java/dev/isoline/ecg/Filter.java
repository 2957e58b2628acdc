package dev.isoline.ecg;

import java.util.OptionalDouble;

/**
 * Filters a lead passed before it was recorded, in Hz; empty where the recording does not say.
 *
 * @param low edge of the high-pass filter
 * @param high edge of the low-pass filter
 * @param notch frequency taken out
 */
public record Filter(OptionalDouble low, OptionalDouble high, OptionalDouble notch) {

    public static final Filter UNKNOWN =
            new Filter(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
}
