package dev.isoline.fhirapi;

import ca.uhn.fhir.interceptor.api.Hook;
import ca.uhn.fhir.interceptor.api.Interceptor;
import ca.uhn.fhir.interceptor.api.Pointcut;
import ca.uhn.fhir.rest.api.RequestTypeEnum;
import ca.uhn.fhir.rest.api.server.RequestDetails;
import ca.uhn.fhir.rest.server.exceptions.InvalidRequestException;
import ca.uhn.fhir.rest.server.exceptions.UnprocessableEntityException;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.hl7.fhir.r4.model.OperationOutcome.IssueSeverity;

/** Judges every body before the server reads it: a reader drops what it does not know. */
@Interceptor
public final class ValidationInterceptor {

    private static final Set<RequestTypeEnum> WITH_RESOURCE =
            Set.of(RequestTypeEnum.POST, RequestTypeEnum.PUT);

    /** POST of search parameters as a form. */
    private static final String SEARCH = "_search";

    private final FhirValidation validation;

    ValidationInterceptor(FhirValidation validation) {
        this.validation = validation;
    }

    @Hook(Pointcut.SERVER_INCOMING_REQUEST_POST_PROCESSED)
    public void validate(RequestDetails request) {
        if (!WITH_RESOURCE.contains(request.getRequestType())
                || SEARCH.equals(request.getOperation())) {
            return;
        }
        String body = new String(request.loadRequestContents(), StandardCharsets.UTF_8);
        OperationOutcome faults = validation.faults(body);
        if (faults.getIssue().stream().anyMatch(i -> i.getSeverity() == IssueSeverity.FATAL)) {
            throw new InvalidRequestException("The body cannot be read.", faults);
        }
        if (faults.hasIssue()) {
            throw new UnprocessableEntityException("The body breaks the rules of FHIR R4.", faults);
        }
    }
}
