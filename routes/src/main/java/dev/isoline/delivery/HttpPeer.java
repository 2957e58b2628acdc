package dev.isoline.delivery;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.net.http.HttpTimeoutException;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.LongSupplier;
import javax.net.ssl.SSLContext;

/** An HTTP server that is posted to: its credential, its TLS and how long it may be silent. */
final class HttpPeer {

    private final HttpClient client;
    private final String authorization;
    private final Duration timeout;

    /**
     * @param authorization value of the Authorization header; empty: none
     * @param timeout for connecting, and for a silence
     * @param tls empty: what the JDK trusts
     */
    HttpPeer(String authorization, Duration timeout, Optional<SSLContext> tls) {
        this.authorization = authorization;
        this.timeout = timeout;
        var builder =
                HttpClient.newBuilder()
                        .version(HttpClient.Version.HTTP_1_1)
                        .followRedirects(HttpClient.Redirect.NEVER)
                        .connectTimeout(timeout);
        tls.ifPresent(builder::sslContext);
        this.client = builder.build();
    }

    /**
     * Posts and waits for the whole answer.
     *
     * @param sent bytes sent so far; as long as it grows the server is not silent
     */
    HttpResponse<byte[]> post(
            URI url, String contentType, String accept, BodyPublisher body, LongSupplier sent)
            throws IOException, InterruptedException {
        var request =
                HttpRequest.newBuilder(url)
                        .header("Content-Type", contentType)
                        .header("Accept", accept)
                        .POST(body);
        if (!authorization.isEmpty()) {
            request.header("Authorization", authorization);
        }
        return answer(client.sendAsync(request.build(), BodyHandlers.ofByteArray()), sent);
    }

    /** The request's own timeout would end with the headers: a body that never ends would hang. */
    private HttpResponse<byte[]> answer(
            CompletableFuture<HttpResponse<byte[]>> answer, LongSupplier sent)
            throws IOException, InterruptedException {
        try {
            long before;
            do {
                before = sent.getAsLong();
                try {
                    return answer.get(timeout.toMillis(), TimeUnit.MILLISECONDS);
                } catch (TimeoutException e) {
                    // Silent only if nothing was sent meanwhile.
                }
            } while (sent.getAsLong() > before);
            throw new HttpTimeoutException("no whole answer in time");
        } catch (ExecutionException e) {
            throw e.getCause() instanceof IOException io ? io : new IOException(e.getCause());
        } finally {
            answer.cancel(true);
        }
    }
}
