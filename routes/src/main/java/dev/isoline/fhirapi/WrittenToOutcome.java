package dev.isoline.fhirapi;

import ca.uhn.fhir.rest.api.MethodOutcome;
import dev.isoline.resources.FhirJson;
import org.hl7.fhir.r4.model.IdType;
import org.hl7.fhir.r4.model.Resource;

/** What became of a create or update, in the words of HAPI's server. */
final class WrittenToOutcome {

    private WrittenToOutcome() {}

    static MethodOutcome map(Written written) {
        Resource stored = FhirJson.decode(written.stored().json());
        var outcome = new MethodOutcome(new IdType(stored.getId()), written.created());
        outcome.setResource(stored);
        outcome.setOperationOutcome(ProblemsToOperationOutcome.accepted(written.problems()));
        return outcome;
    }
}
