package dev.isoline.conformance.partner;

import java.util.UUID;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleEntryComponent;
import org.hl7.fhir.r4.model.Bundle.BundleType;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.hl7.fhir.r4.model.OperationOutcome.IssueSeverity;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r4.model.Resource;

/** What a FHIR server says to a write: the transaction-response, or the resource as stored. */
record FhirAnswer(int status, Resource body) {

    static FhirAnswer to(Resource resource) {
        if (!(resource instanceof Bundle bundle)) {
            return new FhirAnswer(200, resource);
        }
        if (bundle.getType() != BundleType.TRANSACTION) {
            return refusal(400, "a Bundle posted to the base has to be a transaction");
        }
        if (!bundle.getEntry().stream().allMatch(FhirAnswer::hasRequest)) {
            return refusal(400, "every entry of a transaction has to have request.method and url");
        }
        return new FhirAnswer(200, response(bundle));
    }

    /** bdl-3 and 3.1.0.11: each entry of a transaction says what to do with it. */
    private static boolean hasRequest(BundleEntryComponent entry) {
        return entry.getRequest().hasMethod() && entry.getRequest().hasUrl();
    }

    /** One entry for each of the request, in its order (FHIR R4 http.html 3.1.0.11.2). */
    private static Bundle response(Bundle request) {
        var response = new Bundle().setType(BundleType.TRANSACTIONRESPONSE);
        for (BundleEntryComponent entry : request.getEntry()) {
            response.addEntry()
                    .getResponse()
                    .setStatus("201 Created")
                    .setLocation(location(entry.getResource()));
        }
        return response;
    }

    private static String location(Resource resource) {
        String id =
                resource.hasId()
                        ? resource.getIdElement().getIdPart()
                        : UUID.randomUUID().toString();
        return resource.fhirType() + "/" + id + "/_history/1";
    }

    static FhirAnswer refusal(int status, String why) {
        var outcome = new OperationOutcome();
        outcome.addIssue()
                .setSeverity(IssueSeverity.ERROR)
                .setCode(IssueType.PROCESSING)
                .setDiagnostics(why);
        return new FhirAnswer(status, outcome);
    }
}
