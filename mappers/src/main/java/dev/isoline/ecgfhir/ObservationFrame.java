package dev.isoline.ecgfhir;

import dev.isoline.fhir.UtcTime;
import java.time.Duration;
import java.util.Optional;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.Period;
import org.hl7.fhir.r4.model.Reference;

/** What all Observations of a report share. */
final class ObservationFrame {

    private final ReportContext context;
    private final ReportIds ids;
    private final Optional<Period> recorded;

    ObservationFrame(ReportContext context, Optional<Period> recorded) {
        this.context = context;
        this.ids = new ReportIds(context);
        this.recorded = recorded;
    }

    Panel panel(Metric metric) {
        return new Panel(observation(metric, metric.code(), recorded));
    }

    /** One of several panels of the same topic, told apart by their number from 1. */
    Panel panel(Metric metric, int number) {
        return new Panel(observation(metric, metric.code() + "#" + number, recorded));
    }

    /** Something that happened in the recording; two of a kind do not begin at the same time. */
    Observation event(Metric metric, String kind, Duration at, Optional<Period> period) {
        return observation(metric, kind + "@" + at.toNanos(), period);
    }

    private Observation observation(Metric metric, String role, Optional<Period> period) {
        var observation = new Observation();
        observation.setId(ids.of("Observation", role));
        observation.addIdentifier(ReportIds.identifier(observation.getId()));
        observation.addBasedOn(ids.order());
        observation.setStatus(ObservationStatus.PRELIMINARY);
        observation.addCategory(
                new CodeableConcept(
                        new Coding(
                                "http://terminology.hl7.org/CodeSystem/observation-category",
                                "procedure",
                                "Procedure")));
        observation.setCode(metric.concept());
        observation.setSubject(ids.subject());
        period.ifPresent(observation::setEffective);
        observation.setIssuedElement(UtcTime.instant(context.issued()));
        observation.setDevice(new Reference("Device/" + ids.software()));
        return observation;
    }
}
