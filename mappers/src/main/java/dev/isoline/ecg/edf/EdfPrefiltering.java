package dev.isoline.ecg.edf;

import dev.isoline.ecg.Filter;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/**
 * The prefiltering field of an EDF header, such as {@code HP:0.1Hz LP:75Hz N:50Hz} (EDF+
 * specification, 2.1.3.1 item 8); what is written otherwise stays unknown.
 */
final class EdfPrefiltering {

    private EdfPrefiltering() {}

    static Filter filter(String prefiltering) {
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
