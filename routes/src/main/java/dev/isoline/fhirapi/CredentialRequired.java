package dev.isoline.fhirapi;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.stereotype.Component;

/** 401 for every HTTP API (RFC 7617), with an OperationOutcome for those who speak FHIR. */
@Component
final class CredentialRequired implements AuthenticationEntryPoint {

    @Override
    public void commence(
            HttpServletRequest request,
            HttpServletResponse response,
            AuthenticationException reason)
            throws IOException {
        response.setHeader("WWW-Authenticate", "Basic realm=\"Isoline\", charset=\"UTF-8\"");
        response.setStatus(HttpServletResponse.SC_UNAUTHORIZED);
        if (request.getRequestURI().startsWith("/fhir")) {
            String text = "A name and token of the credentials file are required.";
            FhirError.send(response, HttpServletResponse.SC_UNAUTHORIZED, IssueType.LOGIN, text);
        }
    }
}
