package dev.isoline.conformance.validator;

import ca.uhn.fhir.validation.ResultSeverityEnum;
import ca.uhn.fhir.validation.SingleValidationMessage;
import java.util.Set;

/** What the validator says of every resource, right or wrong; never an error. */
final class FhirNoise {

    /**
     * dom-6 recommends a narrative (FHIR R4, DomainResource: best practice, not a requirement);
     * machine-to-machine messages have none.
     */
    private static final Set<String> RULES = Set.of("dom-6");

    private FhirNoise() {}

    static boolean isSignal(SingleValidationMessage message) {
        ResultSeverityEnum severity = message.getSeverity();
        if (severity.compareTo(ResultSeverityEnum.ERROR) >= 0) {
            return true;
        }
        return severity == ResultSeverityEnum.WARNING
                && RULES.stream().noneMatch(message.getMessage()::contains)
                && !isUnknownSystem(message);
    }

    /** Code systems R4 does not publish: nothing here can tell whether the code exists. */
    private static boolean isUnknownSystem(SingleValidationMessage message) {
        String text = message.getMessage();
        return text.contains("CodeSystem is unknown and can't be validated")
                || text.contains("Unknown code system")
                || text.contains("could not be found, so the code cannot be validated");
    }
}
