package dev.isoline.fhirapi;

import dev.isoline.resources.FhirJson;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;

/** An error told before the FHIR server is reached, in its words. */
final class FhirError {

    private FhirError() {}

    static void send(HttpServletResponse response, int status, IssueType type, String text)
            throws IOException {
        response.setStatus(status);
        response.setContentType("application/fhir+json;charset=UTF-8");
        String json = FhirJson.encode(ProblemsToOperationOutcome.error(type, text));
        response.getOutputStream().write(json.getBytes(StandardCharsets.UTF_8));
    }
}
