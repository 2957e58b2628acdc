package dev.isoline.delivery;

import dev.isoline.ledger.DeliveryTable.NewDelivery;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.net.http.HttpTimeoutException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Base64;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/** Posts transaction Bundles to a FHIR endpoint (FHIR R4, http.html#transaction). */
public final class FhirDestination implements Destination {

    private static final int PARALLEL = 4;

    private final URI base;
    private final String authorization;
    private final Duration timeout;
    private final HttpClient client;

    /**
     * @param authorization value of the Authorization header; empty: none
     * @param timeout for connecting, and for the whole answer
     */
    public FhirDestination(URI base, String authorization, Duration timeout) {
        this.base = base;
        this.authorization = authorization;
        this.timeout = timeout;
        this.client =
                HttpClient.newBuilder()
                        .version(HttpClient.Version.HTTP_1_1)
                        .followRedirects(HttpClient.Redirect.NEVER)
                        .connectTimeout(timeout)
                        .build();
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
        HttpResponse<byte[]> response = answer(request(delivery));
        return FhirAnswer.judge(response.statusCode(), response.body());
    }

    private HttpRequest request(NewDelivery delivery) {
        var request =
                HttpRequest.newBuilder(base)
                        .header("Content-Type", delivery.contentType())
                        .header("Accept", "application/fhir+json")
                        .POST(BodyPublishers.ofByteArray(delivery.payload()));
        if (!authorization.isEmpty()) {
            request.header("Authorization", authorization);
        }
        return request.build();
    }

    /** The request's own timeout would end with the headers: a body that never ends would hang. */
    private HttpResponse<byte[]> answer(HttpRequest request)
            throws IOException, InterruptedException {
        CompletableFuture<HttpResponse<byte[]>> answer =
                client.sendAsync(request, BodyHandlers.ofByteArray());
        try {
            return answer.get(timeout.toMillis(), TimeUnit.MILLISECONDS);
        } catch (TimeoutException e) {
            throw new HttpTimeoutException("no whole answer in time");
        } catch (ExecutionException e) {
            throw e.getCause() instanceof IOException io ? io : new IOException(e.getCause());
        } finally {
            answer.cancel(true);
        }
    }
}
