package dev.isoline.attach;

import dev.isoline.fhir.Systems;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import org.hl7.fhir.r4.model.BooleanType;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.Type;

/**
 * Whether the patient has a pacemaker: an Observation in {@code ServiceRequest.supportingInfo},
 * code SNOMED CT 441509002 "Cardiac pacemaker in situ" (as several public FHIR guides code it).
 */
public final class Pacemaker {

    public static final String CODE = "441509002";

    private Pacemaker() {}

    /** The Observation that answers, with a value of yes, no or unknown; empty when none does. */
    public static Optional<Observation> answer(
            ServiceRequest order, Function<String, Optional<Resource>> resolve) {
        return order.getSupportingInfo().stream()
                .map(Reference::getReference)
                .filter(Objects::nonNull)
                .map(resolve)
                .flatMap(Optional::stream)
                .filter(Observation.class::isInstance)
                .map(Observation.class::cast)
                .filter(o -> o.getCode().hasCoding(Systems.SNOMED_CT, CODE))
                .filter(o -> isAnswer(o.getValue()))
                .findFirst();
    }

    private static boolean isAnswer(Type value) {
        return value instanceof BooleanType || value instanceof CodeableConcept c && c.hasCoding();
    }
}
