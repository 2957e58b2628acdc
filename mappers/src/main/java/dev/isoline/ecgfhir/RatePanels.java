package dev.isoline.ecgfhir;

import static dev.isoline.ecgfhir.AmbulatoryEcgMetric.*;

import dev.isoline.ecg.summary.HeartRates.Hour;
import dev.isoline.ecg.summary.HeartRates.Rate;
import dev.isoline.ecg.summary.Summary;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.function.ToLongFunction;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.SampledData;

/**
 * Heart rates of the recording, then of each hour. One value per hour as SampledData (FHIR R4
 * datatypes.html#SampledData): a fortnight is 336 hours, too many for one component each. An hour
 * without a value is {@code E}.
 */
final class RatePanels {

    private static final long HOUR_IN_MS = 3_600_000;
    private static final Absence NO_INTERVAL = Absence.unknown("No interval could be measured.");

    private final Summary summary;
    private final TimeAxis time;

    private RatePanels(Summary summary, TimeAxis time) {
        this.summary = summary;
        this.time = time;
    }

    static List<Observation> of(Summary summary, ObservationFrame frame, TimeAxis time) {
        var panels = new RatePanels(summary, time);
        var all = new ArrayList<Observation>();
        all.add(panels.whole(frame.panel(RATE_PANEL)));
        if (!summary.rates().hours().isEmpty()) {
            all.add(panels.hourly(frame.panel(HOURLY_PANEL)));
        }
        return all;
    }

    private Observation whole(Panel panel) {
        Optional<Rate> rate = summary.rates().whole();
        return panel.with(RATE_MEAN, rate.map(Rate::mean), 0, NO_INTERVAL)
                .with(RATE_MIN, rate.map(Rate::min), 0, NO_INTERVAL)
                .at(RATE_MIN_TIME, rate.flatMap(r -> time.at(r.minAt())))
                .with(RATE_MAX, rate.map(Rate::max), 0, NO_INTERVAL)
                .at(RATE_MAX_TIME, rate.flatMap(r -> time.at(r.maxAt())))
                .observation();
    }

    private Observation hourly(Panel panel) {
        panel.with(HOURLY_ANALYSABLE, series(HOURLY_ANALYSABLE, RatePanels::minutes))
                .with(HOURLY_RATE_MEAN, rates(HOURLY_RATE_MEAN, Rate::mean))
                .with(HOURLY_RATE_MIN, rates(HOURLY_RATE_MIN, Rate::min))
                .with(HOURLY_RATE_MAX, rates(HOURLY_RATE_MAX, Rate::max))
                .with(HOURLY_BEATS, counts(HOURLY_BEATS, Hour::beats));
        if (summary.beats().classified().isEmpty()) {
            panel.without(HOURLY_VENTRICULAR, Absence.UNCLASSIFIED)
                    .without(HOURLY_SUPRAVENTRICULAR, Absence.UNCLASSIFIED);
        } else {
            panel.with(HOURLY_VENTRICULAR, counts(HOURLY_VENTRICULAR, Hour::ventricular))
                    .with(
                            HOURLY_SUPRAVENTRICULAR,
                            counts(HOURLY_SUPRAVENTRICULAR, Hour::supraventricular));
        }
        return panel.observation();
    }

    private static String minutes(Hour hour) {
        return BigDecimal.valueOf(Units.minutes(hour.analysable()))
                .setScale(1, RoundingMode.HALF_UP)
                .toPlainString();
    }

    private SampledData counts(Metric metric, ToLongFunction<Hour> count) {
        return series(metric, hour -> String.valueOf(count.applyAsLong(hour)));
    }

    private SampledData rates(Metric metric, ToDoubleFunction<Rate> value) {
        return series(
                metric,
                hour ->
                        hour.rate()
                                .map(r -> String.valueOf(Math.round(value.applyAsDouble(r))))
                                .orElse("E"));
    }

    private SampledData series(Metric metric, Function<Hour, String> value) {
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
