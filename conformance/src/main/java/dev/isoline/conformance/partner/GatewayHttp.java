package dev.isoline.conformance.partner;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Base64;

/** HTTP with a Basic credential (RFC 7617), as every client of the gateway needs one. */
final class GatewayHttp {

    private static final Duration PATIENCE = Duration.ofSeconds(60);

    private final HttpClient client =
            HttpClient.newBuilder()
                    .version(HttpClient.Version.HTTP_1_1)
                    .connectTimeout(Duration.ofSeconds(10))
                    .build();
    private final String base;
    private final String authorization;

    GatewayHttp(String base, String user, String token) {
        this.base = base;
        this.authorization =
                "Basic "
                        + Base64.getEncoder()
                                .encodeToString(
                                        (user + ":" + token).getBytes(StandardCharsets.UTF_8));
    }

    Reply get(String path) throws IOException, InterruptedException {
        return send(request(path).GET());
    }

    Reply post(String path, String contentType, BodyPublisher body)
            throws IOException, InterruptedException {
        return send(request(path).header("Content-Type", contentType).POST(body));
    }

    private HttpRequest.Builder request(String path) {
        return HttpRequest.newBuilder(URI.create(base + path))
                .timeout(PATIENCE)
                .header("Authorization", authorization);
    }

    private Reply send(HttpRequest.Builder request) throws IOException, InterruptedException {
        HttpResponse<String> response =
                client.send(request.build(), BodyHandlers.ofString(StandardCharsets.UTF_8));
        return new Reply(response.statusCode(), response.body());
    }
}
