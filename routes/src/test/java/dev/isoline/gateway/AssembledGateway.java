package dev.isoline.gateway;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.rest.client.api.IGenericClient;
import ca.uhn.fhir.rest.client.api.ServerValidationModeEnum;
import ca.uhn.fhir.rest.client.interceptor.BasicAuthInterceptor;
import dev.isoline.app.IsolineApplication;
import dev.isoline.ledger.DeliveryTable.DeliveryRow;
import dev.isoline.ledger.Ledger;
import dev.isoline.ledger.OrderTable.OrderRow;
import dev.isoline.resources.FhirJson;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Base64;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Resource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;

/**
 * The whole gateway on free ports with a ledger of its own, shared by the tests of this package.
 * Its partners do not answer, so that what is due to them stays in the outbox to be looked at.
 */
@SpringBootTest(
        classes = IsolineApplication.class,
        webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT,
        properties = {
            "isoline.mllp.idle=3s",
            "isoline.recordings.sweep=200ms",
            "isoline.delivery.first-retry=1h",
            "isoline.delivery.longest-retry=1h",
            "isoline.clients=recorder-station",
            "isoline.default-sender.zone=Europe/Berlin",
            "isoline.senders.harrow-bay.application=HBEHR",
            "isoline.senders.harrow-bay.authorities.HARROWBAY=urn:oid:2.999.10.1",
            "isoline.senders.harrow-bay.zone=Europe/Lisbon",
            "isoline.senders.harrow-bay.destinations=harrow-bay-mllp",
            "isoline.senders.sable-point.destinations=sable-point-fhir",
            "isoline.destinations.tern-street.kind=fhir",
            "isoline.destinations.tern-street.url=http://127.0.0.1:1/fhir",
            "isoline.destinations.tern-street.receives=orders,status",
            "isoline.destinations.harrow-bay-mllp.kind=mllp",
            "isoline.destinations.harrow-bay-mllp.url=mllp://127.0.0.1:1",
            "isoline.destinations.harrow-bay-mllp.receives=status,results",
            "isoline.destinations.sable-point-fhir.kind=fhir",
            "isoline.destinations.sable-point-fhir.url=http://127.0.0.1:1/fhir",
            "isoline.destinations.sable-point-fhir.receives=status,results"
        })
abstract class AssembledGateway {

    static final Path FOLDER = temporaryFolder();
    static final Path DATA = FOLDER.resolve("data");
    static final Path INBOX = FOLDER.resolve("inbox");
    static final int MLLP = freePort();

    private static final HttpClient HTTP = HttpClient.newHttpClient();
    static final LogWatch LOG = new LogWatch();

    @LocalServerPort private int port;
    @Autowired Ledger ledger;

    @DynamicPropertySource
    static void places(DynamicPropertyRegistry registry) {
        registry.add("isoline.data", DATA::toString);
        registry.add("isoline.recordings.watch", INBOX::toString);
        registry.add("isoline.mllp.port", () -> MLLP);
    }

    @BeforeEach
    void listen_to_the_log() {
        LOG.listen();
    }

    /** Every test of this package is a test of this as well. */
    @AfterEach
    void nothing_of_a_patient_is_in_the_log() {
        assertThat(LOG.disclosures()).isEmpty();
    }

    /** What comes back for one message; empty when nothing does. */
    static Answer mllp(String message) {
        return Answer.of(Wire.exchange(MLLP, Wire.frame(message), 1).get(0));
    }

    final IGenericClient fhir(String client) {
        var factory = FhirJson.CONTEXT.getRestfulClientFactory();
        factory.setServerValidationMode(ServerValidationModeEnum.NEVER);
        factory.setSocketTimeout(60_000);
        var generic = factory.newGenericClient("http://127.0.0.1:" + port + "/fhir");
        generic.registerInterceptor(new BasicAuthInterceptor(client, token(client)));
        return generic;
    }

    /** FHIR as a clinic or the operator sends it. */
    final HttpResponse<String> fhir(String client, String method, String path, Resource resource) {
        var body = HttpRequest.BodyPublishers.ofString(FhirJson.encode(resource));
        return http(client, method, "/fhir" + path, "application/fhir+json", body);
    }

    final HttpResponse<String> recording(String query, byte[] file) {
        var body = HttpRequest.BodyPublishers.ofByteArray(file);
        return http("recorder-station", "POST", "/recordings" + query, "application/edf", body);
    }

    final HttpResponse<String> http(
            String client, String method, String path, String type, BodyPublisher body) {
        var request =
                HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                        .method(method, body)
                        .header("Content-Type", type);
        if (!client.isEmpty()) {
            String pair = client + ":" + token(client);
            request.header(
                    "Authorization",
                    "Basic " + Base64.getEncoder().encodeToString(pair.getBytes()));
        }
        try {
            return HTTP.send(request.build(), HttpResponse.BodyHandlers.ofString());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Search results as the operator sees them. */
    final <R extends Resource> List<R> search(Class<R> type, String query) {
        Bundle found =
                fhir("operator")
                        .search()
                        .byUrl(type.getSimpleName() + "?" + query)
                        .returnBundle(Bundle.class)
                        .execute();
        return found.getEntry().stream().map(e -> type.cast(e.getResource())).toList();
    }

    final List<OrderRow> orders(String number) {
        return ledger.read(tables -> tables.orders().byNumber(number));
    }

    final OrderRow order(String number) {
        assertThat(orders(number)).as("orders of one number").hasSize(1);
        return orders(number).get(0);
    }

    final List<DeliveryRow> deliveries(String number) {
        String id = order(number).id();
        return ledger.read(tables -> tables.deliveries().ofOrder(id));
    }

    /** What is due to whom, such as {@code tern-street order}. */
    final List<String> due(String number) {
        return deliveries(number).stream()
                .map(row -> row.delivery().destination() + " " + row.delivery().kind())
                .toList();
    }

    static void await(String what, BooleanSupplier condition) {
        Instant end = Instant.now().plus(Duration.ofSeconds(30));
        while (!condition.getAsBoolean()) {
            assertThat(Instant.now()).as(what).isBefore(end);
            try {
                Thread.sleep(50);
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }
    }

    static String token(String name) {
        try {
            return Files.readAllLines(DATA.resolve("credentials"), StandardCharsets.UTF_8).stream()
                    .filter(line -> line.startsWith(name + ":"))
                    .map(line -> line.substring(name.length() + 1))
                    .findFirst()
                    .orElseThrow();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static int freePort() {
        try (var socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Path temporaryFolder() {
        try {
            return Files.createTempDirectory("isoline-gateway");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
