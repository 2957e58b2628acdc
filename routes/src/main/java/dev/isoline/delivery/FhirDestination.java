package dev.isoline.delivery;

import dev.isoline.ledger.DeliveryTable.NewDelivery;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Base64;
import java.util.Optional;
import javax.net.ssl.SSLContext;

/** Posts transaction Bundles to a FHIR endpoint (FHIR R4, http.html#transaction). */
public final class FhirDestination implements Destination {

    private static final int PARALLEL = 4;

    private final URI base;
    private final HttpPeer server;

    /**
     * @param authorization value of the Authorization header; empty: none
     * @param timeout for connecting, and for the whole answer
     * @param tls empty: what the JDK trusts
     */
    public FhirDestination(
            URI base, String authorization, Duration timeout, Optional<SSLContext> tls) {
        this.base = base;
        this.server = new HttpPeer(authorization, timeout, tls);
    }

    /** RFC 6750. */
    public static String bearer(String token) {
        return "Bearer " + token;
    }

    /** RFC 7617. */
    public static String basic(String userAndPassword) {
        byte[] bytes = userAndPassword.getBytes(StandardCharsets.UTF_8);
        return "Basic " + Base64.getEncoder().encodeToString(bytes);
    }

    @Override
    public int parallel() {
        return PARALLEL;
    }

    @Override
    public Verdict send(NewDelivery delivery) throws IOException, InterruptedException {
        var response =
                server.post(
                        base,
                        delivery.contentType(),
                        "application/fhir+json",
                        BodyPublishers.ofByteArray(delivery.payload()),
                        () -> 0);
        return FhirAnswer.judge(response.statusCode(), response.body());
    }
}
