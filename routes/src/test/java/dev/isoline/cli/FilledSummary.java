package dev.isoline.cli;

import dev.isoline.ecg.summary.AnalysisSettings;
import dev.isoline.ecg.summary.EpisodeKind;
import dev.isoline.ecg.summary.Measure;
import dev.isoline.ecg.summary.Summary;
import dev.isoline.ecg.summary.Threshold;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.time.Duration;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A summary in which every optional value is there, every list has one entry and every map all its
 * keys, made by reflection; one value of it, named by its path, can be another.
 */
final class FilledSummary {

    private final String other;
    private final String refused;
    private final Set<String> paths = new LinkedHashSet<>();
    private int number = 100;

    private FilledSummary(String other, String refused) {
        this.other = other;
        this.refused = refused;
    }

    /** Of every value; a refusal stands for the reason why a measure has none. */
    static Set<String> paths() {
        var filled = new FilledSummary("", "");
        filled.fill(Summary.class, "");
        return filled.paths;
    }

    /** Where the path names a refusal, its measure is refused. */
    static Summary before(String path) {
        return (Summary) new FilledSummary("", path).fill(Summary.class, "");
    }

    /** The same with another value at the path. */
    static Summary after(String path) {
        return (Summary) new FilledSummary(path, path).fill(Summary.class, "");
    }

    private Object fill(Type type, String path) {
        if (type instanceof ParameterizedType of) {
            return container(of, path);
        }
        var plain = (Class<?>) type;
        if (plain == Measure.class) {
            return measure(path);
        }
        if (plain == AnalysisSettings.class) {
            return new AnalysisSettings(thresholds(path));
        }
        return plain.isRecord() ? record(plain, path) : value(plain, path);
    }

    private Object record(Class<?> type, String path) {
        var components = type.getRecordComponents();
        var values = new Object[components.length];
        for (int i = 0; i < values.length; i++) {
            var component = components[i];
            values[i] = fill(component.getGenericType(), path + "/" + component.getName());
        }
        var types = Arrays.stream(components).map(RecordComponent::getType);
        try {
            return type.getDeclaredConstructor(types.toArray(Class<?>[]::new)).newInstance(values);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    private Object container(ParameterizedType type, String path) {
        Type[] of = type.getActualTypeArguments();
        if (type.getRawType() == Optional.class) {
            return Optional.of(fill(of[0], path));
        }
        if (type.getRawType() == List.class) {
            return List.of(fill(of[0], path));
        }
        var map = new LinkedHashMap<Object, Object>();
        for (var key : ((Class<?>) of[0]).getEnumConstants()) {
            map.put(key, fill(of[1], path + "/" + key));
        }
        return map;
    }

    private Measure measure(String path) {
        String refusal = path + "/refusal";
        double value = (Double) value(Double.class, path + "/value");
        String reason = (String) value(String.class, refusal);
        return refused.equals(refusal) ? Measure.refused(reason) : Measure.of(value);
    }

    private Map<Threshold, Double> thresholds(String path) {
        var values = new LinkedHashMap<Threshold, Double>();
        for (var threshold : Threshold.values()) {
            boolean isOther = isOther(path + "/" + threshold);
            values.put(threshold, isOther ? threshold.most() : threshold.standard());
        }
        return values;
    }

    /** No two are alike, and another is far from the first. */
    private Object value(Class<?> type, String path) {
        boolean isOther = isOther(path);
        int value = (isOther ? 3 : 1) * inRange(number++, path);
        return switch (type.getSimpleName()) {
            case "int", "Integer" -> value;
            case "long", "Long" -> (long) value;
            case "double", "Double" -> (double) value;
            case "Duration" -> Duration.ofSeconds(value);
            case "String" -> path + (isOther ? " other" : "");
            case "LocalDateTime" -> LocalDateTime.of(2026, 11, 2, isOther ? 9 : 8, 30);
            case "EpisodeKind" ->
                    isOther ? EpisodeKind.BRADYCARDIA : EpisodeKind.ATRIAL_FIBRILLATION;
            default -> throw new IllegalStateException("nothing known to fill " + type);
        };
    }

    /** Shares stay under 100, seconds of a minute under 60, and parts under the whole. */
    private static int inRange(int value, String path) {
        if (path.endsWith("/percent")) {
            return 1 + value % 30;
        }
        if (path.matches(".*/minutes/(recorded|usable|disturbed).*")) {
            return 1 + value % 19;
        }
        return path.endsWith("/recorded") ? 1000 * value : value;
    }

    private boolean isOther(String path) {
        paths.add(path);
        return path.equals(other);
    }
}
