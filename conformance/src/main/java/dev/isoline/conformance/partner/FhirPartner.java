package dev.isoline.conformance.partner;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.parser.DataFormatException;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.Closeable;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.hl7.fhir.r4.model.Resource;

/**
 * A FHIR R4 server that takes what it is sent and remembers it: transaction Bundles, single POST
 * and PUT (FHIR R4 http.html 3.1.0). It stands for the monitoring service and for clinics.
 */
public final class FhirPartner implements Closeable {

    private static final FhirContext R4 = FhirContext.forR4Cached();

    private final HttpServer server;
    private final ExecutorService threads = Executors.newFixedThreadPool(4);
    private final Inbox<Received> inbox = new Inbox<>();

    /**
     * @param target path below the base
     * @param json the body as it came
     */
    public record Received(String method, String target, String json, Resource resource) {}

    public FhirPartner() throws IOException {
        server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/fhir", this::handle);
        server.setExecutor(threads);
        server.start();
    }

    public String url() {
        return "http://127.0.0.1:" + server.getAddress().getPort() + "/fhir";
    }

    public Inbox<Received> inbox() {
        return inbox;
    }

    private void handle(HttpExchange exchange) throws IOException {
        try (exchange) {
            String json =
                    new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
            FhirAnswer answer = answer(exchange, json);
            byte[] body =
                    R4.newJsonParser()
                            .encodeResourceToString(answer.body())
                            .getBytes(StandardCharsets.UTF_8);
            exchange.getResponseHeaders().add("Content-Type", "application/fhir+json");
            exchange.sendResponseHeaders(answer.status(), body.length);
            exchange.getResponseBody().write(body);
        }
    }

    private FhirAnswer answer(HttpExchange exchange, String json) {
        String method = exchange.getRequestMethod();
        if (!method.equals("POST") && !method.equals("PUT")) {
            return FhirAnswer.refusal(405, "only POST and PUT are served here");
        }
        try {
            var resource = (Resource) R4.newJsonParser().parseResource(json);
            String target = exchange.getRequestURI().getPath().replaceFirst("^/fhir/?", "");
            FhirAnswer answer = FhirAnswer.to(resource);
            if (answer.status() < 300) {
                inbox.add(new Received(method, target, json, resource));
            }
            return answer;
        } catch (DataFormatException e) {
            return FhirAnswer.refusal(400, "the body is not a FHIR R4 resource in JSON");
        }
    }

    @Override
    public void close() {
        server.stop(0);
        threads.shutdownNow();
    }
}
