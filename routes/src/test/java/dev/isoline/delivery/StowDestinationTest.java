package dev.isoline.delivery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import dev.isoline.delivery.Verdict.Outcome;
import dev.isoline.ledger.DeliveryTable.NewDelivery;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.net.http.HttpTimeoutException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** PS3.18 10.5.1 and 8.7.3.5 (2024e): what a STOW-RS request looks like on the wire. */
class StowDestinationTest {

    @TempDir Path data;
    private final ExecutorService threads = Executors.newCachedThreadPool();
    private HttpServer server;
    private volatile HttpExchange exchange;
    private volatile byte[] body;
    private volatile long pauseMillis;
    private Duration timeout = Duration.ofSeconds(1);

    @BeforeEach
    void start() throws IOException {
        server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/dicom-web", this::answer);
        server.setExecutor(threads);
        server.start();
    }

    @AfterEach
    void stop() {
        server.stop(0);
        threads.shutdownNow();
    }

    @Test
    void one_object_is_posted_to_studies_as_one_part() throws Exception {
        byte[] object = Objects.write(data.resolve("o.dcm"), "2.999.7", 50_001);

        assertThat(send("o.dcm").outcome()).isEqualTo(Outcome.DELIVERED);

        var headers = exchange.getRequestHeaders();
        assertThat(exchange.getRequestURI().getPath()).isEqualTo("/dicom-web/studies");
        assertThat(headers.getFirst("Accept")).isEqualTo("application/dicom+json");
        assertThat(headers.getFirst("Authorization")).isEqualTo("Bearer t");
        // PS3.18 10.5.1.4: Content-Length, or Transfer-Encoding without one.
        assertThat(headers.getFirst("Content-Length")).isEqualTo("" + body.length);
        String type = headers.getFirst("Content-Type");
        assertThat(type).matches("multipart/related; type=\"application/dicom\"; boundary=\\S+");
        String boundary = type.substring(type.indexOf("boundary=") + "boundary=".length());
        assertThat(body).isEqualTo(onePart(boundary, object));
    }

    @Test
    void an_object_that_is_not_in_the_data_folder_is_refused() throws Exception {
        assertThat(send("missing.dcm").outcome()).isEqualTo(Outcome.REFUSED);
        assertThat(send("../o.dcm").outcome()).isEqualTo(Outcome.REFUSED);
        assertThat(send(null).outcome()).isEqualTo(Outcome.REFUSED);
        assertThat(body).isNull();
    }

    @Test
    void a_damaged_object_is_refused_and_never_leaves() throws Exception {
        byte[] object = Objects.write(data.resolve("o.dcm"), "2.999.7", 100);
        Files.write(data.resolve("half.dcm"), Arrays.copyOf(object, object.length - 50));
        assertThat(send("half.dcm").outcome()).isEqualTo(Outcome.REFUSED);
        assertThat(body).isNull();
    }

    @Test
    void a_server_that_reads_slowly_is_not_silent() throws Exception {
        Objects.write(data.resolve("o.dcm"), "2.999.7", 14_000_000);
        pauseMillis = 20;
        timeout = Duration.ofSeconds(3);
        Instant before = Instant.now();
        assertThat(send("o.dcm").outcome()).isEqualTo(Outcome.DELIVERED);
        assertThat(Duration.between(before, Instant.now())).isGreaterThan(timeout);
    }

    @Test
    void a_server_that_takes_the_object_and_says_nothing_is_given_up() throws Exception {
        Objects.write(data.resolve("o.dcm"), "2.999.7", 10);
        pauseMillis = 5_000;
        assertThatThrownBy(() -> send("o.dcm")).isInstanceOf(HttpTimeoutException.class);
    }

    private Verdict send(String path) throws Exception {
        var base = URI.create("http://127.0.0.1:" + server.getAddress().getPort() + "/dicom-web/");
        var destination = new StowDestination(base, "Bearer t", timeout, Optional.empty(), data);
        return destination.send(
                new NewDelivery(
                        "x", "o", "object", "application/dicom", null, path, Instant.EPOCH));
    }

    private void answer(HttpExchange request) throws IOException {
        try (request) {
            exchange = request;
            body = slowly(request);
            byte[] stored =
                    StoreInstancesResponseTest.stored("2.999.7", "")
                            .getBytes(StandardCharsets.UTF_8);
            request.sendResponseHeaders(200, stored.length);
            request.getResponseBody().write(stored);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private byte[] slowly(HttpExchange request) throws IOException, InterruptedException {
        var bytes = new ByteArrayOutputStream();
        for (byte[] some = read(request); some.length > 0; some = read(request)) {
            bytes.write(some);
            Thread.sleep(pauseMillis);
        }
        return bytes.toByteArray();
    }

    private static byte[] read(HttpExchange request) throws IOException {
        return request.getRequestBody().readNBytes(64 * 1024);
    }

    /** RFC 2046 5.1.1. */
    private static byte[] onePart(String boundary, byte[] object) throws IOException {
        var expected = new ByteArrayOutputStream();
        expected.write(("--" + boundary + "\r\n").getBytes(StandardCharsets.US_ASCII));
        expected.write(
                "Content-Type: application/dicom\r\n\r\n".getBytes(StandardCharsets.US_ASCII));
        expected.write(object);
        expected.write(("\r\n--" + boundary + "--\r\n").getBytes(StandardCharsets.US_ASCII));
        return expected.toByteArray();
    }
}
