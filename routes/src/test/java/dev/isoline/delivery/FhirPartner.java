package dev.isoline.delivery;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Function;

/** A FHIR endpoint on loopback that answers as it is told and keeps what it got. */
final class FhirPartner implements AutoCloseable {

    record Answer(int status, String body) {}

    record Request(String body, String contentType, String authorization) {}

    static final Answer STORED =
            new Answer(
                    200,
                    "{\"resourceType\":\"Bundle\",\"type\":\"transaction-response\","
                            + "\"entry\":[{\"response\":{\"status\":\"201 Created\"}}]}");

    final List<Request> requests = new CopyOnWriteArrayList<>();
    volatile Function<String, Answer> answers = body -> STORED;
    private final HttpServer server;
    private final ExecutorService threads = Executors.newCachedThreadPool();

    FhirPartner() throws IOException {
        server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/fhir", this::answer);
        server.setExecutor(threads);
        server.start();
    }

    URI url() {
        return URI.create("http://127.0.0.1:" + server.getAddress().getPort() + "/fhir");
    }

    List<String> bodies() {
        return requests.stream().map(Request::body).toList();
    }

    private void answer(HttpExchange exchange) throws IOException {
        try (exchange) {
            var headers = exchange.getRequestHeaders();
            var body = new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
            requests.add(
                    new Request(
                            body,
                            headers.getFirst("Content-Type"),
                            headers.getFirst("Authorization")));
            Answer answer = answers.apply(body);
            byte[] bytes = answer.body().getBytes(StandardCharsets.UTF_8);
            exchange.sendResponseHeaders(answer.status(), bytes.length == 0 ? -1 : bytes.length);
            exchange.getResponseBody().write(bytes);
        }
    }

    @Override
    public void close() {
        server.stop(0);
        threads.shutdownNow();
    }
}
