package dev.isoline.ecg;

import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;

/** Units of a voltage and how many microvolts one of them is. */
public final class Microvolts {

    private static final Map<String, Double> PER_UNIT =
            Map.of("nv", 1e-3, "uv", 1.0, "\u00b5v", 1.0, "\u03bcv", 1.0, "mv", 1e3, "v", 1e6);

    private Microvolts() {}

    /** Empty when the unit is no voltage. */
    public static OptionalDouble per(String unit) {
        var factor = PER_UNIT.get(unit.toLowerCase(Locale.ROOT));
        return factor == null ? OptionalDouble.empty() : OptionalDouble.of(factor);
    }
}
