package dev.isoline.ecgfhir;

import static dev.isoline.ecgfhir.AmbulatoryEcgMetric.HOURLY_BEATS;
import static dev.isoline.ecgfhir.AmbulatoryEcgMetric.HOURLY_RATE_MAX;
import static dev.isoline.ecgfhir.AmbulatoryEcgMetric.HOURLY_RATE_MEAN;
import static dev.isoline.ecgfhir.AmbulatoryEcgMetric.HOURLY_RATE_MIN;

import dev.isoline.ecg.summary.HeartRates.Hour;
import dev.isoline.ecg.summary.HeartRates.Rate;
import dev.isoline.ecg.summary.Summary;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.SampledData;

/**
 * One value per hour as SampledData (FHIR R4 datatypes.html#SampledData): a fortnight is 336 hours,
 * too many for one component each. An hour without a value is {@code E}.
 */
final class HourlyRates {

    private static final long HOUR_IN_MS = 3_600_000;

    private HourlyRates() {}

    static Observation of(Summary summary, Panel panel) {
        return panel.with(HOURLY_RATE_MEAN, rates(summary, HOURLY_RATE_MEAN, Rate::mean))
                .with(HOURLY_RATE_MIN, rates(summary, HOURLY_RATE_MIN, Rate::min))
                .with(HOURLY_RATE_MAX, rates(summary, HOURLY_RATE_MAX, Rate::max))
                .with(HOURLY_BEATS, series(summary, HOURLY_BEATS, h -> String.valueOf(h.beats())))
                .observation();
    }

    private static SampledData rates(
            Summary summary, AmbulatoryEcgMetric metric, ToDoubleFunction<Rate> value) {
        return series(
                summary,
                metric,
                hour -> {
                    Optional<Rate> rate = hour.rate();
                    return rate.map(r -> String.valueOf(Math.round(value.applyAsDouble(r))))
                            .orElse("E");
                });
    }

    private static SampledData series(
            Summary summary, AmbulatoryEcgMetric metric, Function<Hour, String> value) {
        return new SampledData()
                .setOrigin(Panel.quantity(metric, 0, 0))
                .setPeriod(HOUR_IN_MS)
                .setDimensions(1)
                .setData(
                        summary.rates().hours().stream()
                                .map(value)
                                .collect(Collectors.joining(" ")));
    }
}
