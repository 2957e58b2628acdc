package dev.isoline.fhirapi;

import ca.uhn.fhir.rest.client.api.IGenericClient;
import ca.uhn.fhir.rest.client.api.ServerValidationModeEnum;
import ca.uhn.fhir.rest.client.interceptor.BasicAuthInterceptor;
import dev.isoline.app.IsolineApplication;
import dev.isoline.ledger.Ledger;
import dev.isoline.resources.FhirJson;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;

/** The application on a free port with a ledger of its own, shared by the tests of this package. */
@SpringBootTest(
        classes = IsolineApplication.class,
        webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT,
        properties = {
            "isoline.mllp.port=0",
            "isoline.clients=recorder-station",
            "isoline.senders.sable-point.destinations="
        })
abstract class RunningGateway {

    private static final Path DATA = temporaryFolder();
    private static final HttpClient HTTP = HttpClient.newHttpClient();

    @LocalServerPort private int port;
    @Autowired protected Ledger ledger;

    @DynamicPropertySource
    static void dataFolder(DynamicPropertyRegistry registry) {
        registry.add("isoline.data", DATA::toString);
    }

    final String base() {
        return "http://127.0.0.1:" + port + "/fhir";
    }

    final IGenericClient client() {
        var factory = FhirJson.CONTEXT.getRestfulClientFactory();
        factory.setServerValidationMode(ServerValidationModeEnum.NEVER);
        factory.setSocketTimeout(60_000);
        var client = factory.newGenericClient(base());
        client.registerInterceptor(new BasicAuthInterceptor("sable-point", token("sable-point")));
        return client;
    }

    /** A request as bytes, to send what a well-made client would not. */
    final HttpResponse<String> send(String method, String path, String body, String... headers) {
        return sendAs(basic("sable-point", token("sable-point")), method, path, body, headers);
    }

    final HttpResponse<String> sendAs(
            String authorization, String method, String path, String body, String... headers) {
        var publisher =
                body == null
                        ? HttpRequest.BodyPublishers.noBody()
                        : HttpRequest.BodyPublishers.ofString(body);
        var request =
                HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                        .method(method, publisher)
                        .setHeader("Content-Type", "application/fhir+json");
        if (authorization != null) {
            request.header("Authorization", authorization);
        }
        for (int i = 0; i < headers.length; i += 2) {
            request.setHeader(headers[i], headers[i + 1]);
        }
        try {
            return HTTP.send(request.build(), HttpResponse.BodyHandlers.ofString());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    static String basic(String name, String token) {
        byte[] pair = (name + ":" + token).getBytes(StandardCharsets.UTF_8);
        return "Basic " + Base64.getEncoder().encodeToString(pair);
    }

    static OperationOutcome outcome(HttpResponse<String> response) {
        return (OperationOutcome) FhirJson.decode(response.body());
    }

    static String token(String name) {
        try {
            return Files.readAllLines(DATA.resolve("credentials")).stream()
                    .filter(line -> line.startsWith(name + ":"))
                    .map(line -> line.substring(name.length() + 1))
                    .findFirst()
                    .orElseThrow();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Path ledgerFile() {
        return DATA.resolve("isoline.db");
    }

    private static Path temporaryFolder() {
        try {
            return Files.createTempDirectory("isoline-fhir");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
