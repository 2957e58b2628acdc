package dev.isoline.fhirapi;

import ca.uhn.fhir.interceptor.api.Hook;
import ca.uhn.fhir.interceptor.api.Interceptor;
import ca.uhn.fhir.interceptor.api.Pointcut;
import ca.uhn.fhir.parser.DataFormatException;
import ca.uhn.fhir.rest.server.exceptions.BaseServerResponseException;
import ca.uhn.fhir.rest.server.exceptions.InternalErrorException;
import ca.uhn.fhir.rest.server.exceptions.InvalidRequestException;
import ca.uhn.fhir.rest.server.exceptions.ResourceVersionConflictException;
import ca.uhn.fhir.rest.server.exceptions.UnprocessableEntityException;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import java.util.Arrays;
import org.hl7.fhir.instance.model.api.IBaseOperationOutcome;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Turns what went wrong into an HTTP status and OperationOutcome that quote no value. */
@Interceptor
public final class ErrorInterceptor {

    private static final Logger LOG = LoggerFactory.getLogger(ErrorInterceptor.class);

    /** The server wraps what a provider throws; the first cause that is ours is the answer. */
    @Hook(Pointcut.SERVER_PRE_PROCESS_OUTGOING_EXCEPTION)
    public BaseServerResponseException answer(Throwable fault) {
        for (Throwable cause = fault; cause != null; cause = cause.getCause()) {
            if (cause instanceof ContentError refusal) {
                return refused(refusal);
            }
            if (cause instanceof DataFormatException) {
                String text = "A value of the request cannot be read.";
                return new InvalidRequestException(text, error(IssueType.VALUE, text));
            }
            if (cause instanceof BaseServerResponseException known && isRefusal(known)) {
                return known;
            }
        }
        return internal(fault);
    }

    /** HAPI reports unreadable values as refusals of its own, with the value in the text. */
    private static boolean isRefusal(BaseServerResponseException known) {
        return known.getStatusCode() < InternalErrorException.STATUS_CODE
                && !(known.getCause() instanceof DataFormatException);
    }

    private static BaseServerResponseException refused(ContentError refusal) {
        var outcome = ProblemsToOperationOutcome.refused(refusal.problems());
        boolean conflict =
                refusal.problems().stream()
                        .map(Problem::kind)
                        .anyMatch(k -> k == Problem.Kind.DUPLICATE_KEY);
        return conflict
                ? new ResourceVersionConflictException(refusal.getMessage(), outcome)
                : new UnprocessableEntityException(refusal.getMessage(), outcome);
    }

    /** The message of an unforeseen fault may quote a patient, so only its place is logged. */
    private static BaseServerResponseException internal(Throwable fault) {
        Throwable root = fault;
        while (root.getCause() != null) {
            root = root.getCause();
        }
        LOG.error(
                "A FHIR request failed: {} at {}",
                root.getClass().getName(),
                Arrays.stream(root.getStackTrace()).limit(8).toList());
        String text = "The request failed; nothing of it was stored but its raw body.";
        return new InternalErrorException(text, error(IssueType.EXCEPTION, text));
    }

    private static IBaseOperationOutcome error(IssueType type, String text) {
        return ProblemsToOperationOutcome.error(type, text);
    }
}
