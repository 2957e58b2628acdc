package dev.isoline.ecg.summary;

import java.time.Duration;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * The thresholds an analysis uses: the published defaults of {@link Threshold} where nothing else
 * is set.
 *
 * @param values of every threshold, in the unit of each
 */
public record AnalysisSettings(Map<Threshold, Double> values) {

    public static final AnalysisSettings DEFAULT = new AnalysisSettings(Map.of());

    /**
     * @param values those that differ from the default
     * @throws IllegalArgumentException with a sentence naming the threshold that is out of range
     */
    public AnalysisSettings {
        var all = new EnumMap<Threshold, Double>(Threshold.class);
        for (var threshold : Threshold.values()) {
            all.put(threshold, checked(threshold, values.get(threshold)));
        }
        values = Collections.unmodifiableMap(all);
    }

    private static double checked(Threshold threshold, Double value) {
        double wanted = Optional.ofNullable(value).orElse(threshold.standard());
        if (!(wanted >= threshold.least() && wanted <= threshold.most())) {
            throw new IllegalArgumentException(
                    String.format(
                            "The threshold %s takes %s to %s.",
                            threshold.key(), plain(threshold.least()), plain(threshold.most())));
        }
        return wanted;
    }

    private static String plain(double value) {
        return value == Math.rint(value) ? String.valueOf((long) value) : String.valueOf(value);
    }

    /**
     * @param named values by {@link Threshold#key()}
     * @throws IllegalArgumentException with a sentence naming what is unknown or out of range
     */
    public static AnalysisSettings of(Map<String, Double> named) {
        var values = new EnumMap<Threshold, Double>(Threshold.class);
        named.forEach((key, value) -> values.put(threshold(key), value));
        return new AnalysisSettings(values);
    }

    private static Threshold threshold(String key) {
        return Threshold.ofKey(key)
                .orElseThrow(
                        () -> new IllegalArgumentException("There is no threshold " + key + "."));
    }

    public AnalysisSettings with(Threshold threshold, double value) {
        var changed = new EnumMap<>(values);
        changed.put(threshold, value);
        return new AnalysisSettings(changed);
    }

    /** In the threshold's unit. */
    public double value(Threshold threshold) {
        return values.get(threshold);
    }

    /** Of a threshold without a unit. */
    public int count(Threshold threshold) {
        return (int) value(threshold);
    }

    /** Of a threshold in seconds. */
    public Duration duration(Threshold threshold) {
        return Duration.ofNanos(Math.round(value(threshold) * 1e9));
    }
}
