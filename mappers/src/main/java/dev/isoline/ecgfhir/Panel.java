package dev.isoline.ecgfhir;

import dev.isoline.fhir.Systems;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationComponentComponent;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Type;

/** An Observation that holds the measurements of one topic as components. */
final class Panel {

    /** Codes of data-absent-reason (FHIR R4) in use: why there is no value. */
    enum Absent {
        /** It could not be measured. */
        UNKNOWN("unknown"),
        /** Nobody looked for it. */
        NOT_PERFORMED("not-performed");

        private final String code;

        Absent(String code) {
            this.code = code;
        }

        CodeableConcept concept() {
            return new CodeableConcept(
                    new Coding(
                            "http://terminology.hl7.org/CodeSystem/data-absent-reason",
                            code,
                            null));
        }
    }

    private final Observation observation;

    Panel(Observation observation) {
        this.observation = observation;
    }

    /** A measured value, rounded half up; one that was not measured says why. */
    Panel with(AmbulatoryEcgMetric metric, Optional<Double> value, int decimals, Absent absent) {
        ObservationComponentComponent component = component(metric);
        value.ifPresentOrElse(
                v -> component.setValue(quantity(metric, v, decimals)),
                () -> component.setDataAbsentReason(absent.concept()));
        return this;
    }

    Panel with(AmbulatoryEcgMetric metric, double value, int decimals) {
        component(metric).setValue(quantity(metric, value, decimals));
        return this;
    }

    Panel with(AmbulatoryEcgMetric metric, Type value) {
        component(metric).setValue(value);
        return this;
    }

    /** A point in time; left out when the recording does not say when it began. */
    Panel at(AmbulatoryEcgMetric metric, Optional<DateTimeType> time) {
        time.ifPresent(t -> component(metric).setValue(t));
        return this;
    }

    Observation observation() {
        return observation;
    }

    static Quantity quantity(AmbulatoryEcgMetric metric, double value, int decimals) {
        return new Quantity()
                .setValue(BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP))
                .setUnit(metric.unit())
                .setSystem(Systems.UCUM)
                .setCode(metric.unit());
    }

    private ObservationComponentComponent component(AmbulatoryEcgMetric metric) {
        return observation.addComponent().setCode(metric.concept());
    }
}
