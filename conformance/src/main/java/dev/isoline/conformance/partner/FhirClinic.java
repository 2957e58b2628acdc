package dev.isoline.conformance.partner;

import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;

/** A clinic's record system as FHIR R4 client. */
public final class FhirClinic {

    private static final String FHIR_JSON = "application/fhir+json";

    private final GatewayHttp http;

    /**
     * @param base of the gateway, without {@code /fhir}
     */
    public FhirClinic(String base, String user, String token) {
        this.http = new GatewayHttp(base, user, token);
    }

    public Reply transaction(String bundle) throws IOException, InterruptedException {
        return http.post("/fhir", FHIR_JSON, BodyPublishers.ofString(bundle));
    }

    /**
     * @param query such as {@code ServiceRequest?identifier=P-1}
     */
    public Reply search(String query) throws IOException, InterruptedException {
        return http.get("/fhir/" + query);
    }
}
