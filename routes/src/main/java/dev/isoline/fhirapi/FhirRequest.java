package dev.isoline.fhirapi;

import ca.uhn.fhir.rest.api.server.RequestDetails;
import ca.uhn.fhir.rest.server.servlet.ServletRequestDetails;
import jakarta.servlet.http.HttpServletRequest;
import java.security.Principal;

/** What the API needs to know of the request at hand. */
final class FhirRequest {

    private FhirRequest() {}

    /** The name of the credential; the API is not reached without one. */
    static String actor(RequestDetails request) {
        Principal principal = servlet(request).getUserPrincipal();
        return principal == null ? "anonymous" : principal.getName();
    }

    /** Row of the stored message this request came as. */
    static long messageId(RequestDetails request) {
        return (Long) servlet(request).getAttribute(RawRequestFilter.MESSAGE_ID);
    }

    private static HttpServletRequest servlet(RequestDetails request) {
        return ((ServletRequestDetails) request).getServletRequest();
    }
}
