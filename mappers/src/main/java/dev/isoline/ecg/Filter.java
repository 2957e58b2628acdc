package dev.isoline.ecg;

import java.util.OptionalDouble;
import java.util.regex.Pattern;

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

    /**
     * The prefiltering field of an EDF header, such as {@code HP:0.1Hz LP:75Hz N:50Hz} (EDF+
     * specification, 2.1.3.1 item 8); what is written otherwise stays unknown.
     */
    static Filter ofEdf(String prefiltering) {
        return new Filter(
                edge("HP", prefiltering), edge("LP", prefiltering), edge("N", prefiltering));
    }

    private static OptionalDouble edge(String name, String prefiltering) {
        var edge =
                Pattern.compile(
                                "(?i)(?:^|\\s)"
                                        + name
                                        + ":\\s?(\\d{1,6}(?:\\.\\d{1,9})?)\\s?(m?)Hz")
                        .matcher(prefiltering);
        return edge.find()
                ? OptionalDouble.of(
                        Double.parseDouble(edge.group(1)) / (edge.group(2).isEmpty() ? 1 : 1000))
                : OptionalDouble.empty();
    }
}
