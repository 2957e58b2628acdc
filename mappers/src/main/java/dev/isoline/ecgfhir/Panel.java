package dev.isoline.ecgfhir;

import dev.isoline.ecg.summary.Measure;
import dev.isoline.fhir.Systems;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationComponentComponent;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Type;

/** An Observation that holds the measurements of one topic as components. */
final class Panel {

    private final Observation observation;

    Panel(Observation observation) {
        this.observation = observation;
    }

    /** A measured value, rounded half up; one that was not measured says why. */
    Panel with(Metric metric, Optional<Double> value, int decimals, Absence absence) {
        return value.map(v -> with(metric, v, decimals)).orElseGet(() -> without(metric, absence));
    }

    /** A measured value, rounded half up, or why it was refused. */
    Panel with(Metric metric, Measure measure, int decimals) {
        String reason = measure.refusal().orElse("It could not be measured.");
        return with(metric, measure.value(), decimals, Absence.unknown(reason));
    }

    Panel with(Metric metric, double value, int decimals) {
        return with(metric, quantity(metric, value, decimals));
    }

    Panel with(Metric metric, Type value) {
        component(metric).setValue(value);
        return this;
    }

    Panel without(Metric metric, Absence absence) {
        component(metric).setDataAbsentReason(absence.concept());
        return this;
    }

    /** A point in time; left out when the recording does not say when it began. */
    Panel at(Metric metric, Optional<DateTimeType> time) {
        time.ifPresent(t -> component(metric).setValue(t));
        return this;
    }

    Observation observation() {
        return observation;
    }

    static Quantity quantity(Metric metric, double value, int decimals) {
        return new Quantity()
                .setValue(BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP))
                .setUnit(metric.unit())
                .setSystem(Systems.UCUM)
                .setCode(metric.unit());
    }

    private ObservationComponentComponent component(Metric metric) {
        return observation.addComponent().setCode(metric.concept());
    }
}
