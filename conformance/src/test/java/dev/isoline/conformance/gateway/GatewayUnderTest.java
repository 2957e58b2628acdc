package dev.isoline.conformance.gateway;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;

/** The real gateway in a process of its own, started by the launcher, that may be killed. */
final class GatewayUnderTest implements AutoCloseable {

    private static final Duration START = Duration.ofMinutes(3);
    private static final HttpClient HTTP = HttpClient.newHttpClient();

    private final Path folder;
    private final int http = freePort();
    private final int mllp = freePort();
    private final String destinations;
    private Process process;

    /**
     * @param destinations lines of YAML; the clinic's own is called {@code clinic}
     */
    GatewayUnderTest(Path folder, String destinations) throws IOException {
        this.folder = folder;
        this.destinations = destinations;
        Files.writeString(folder.resolve("isoline.yaml"), configuration());
    }

    /** What is not built cannot be tested: {@code mvn verify} packages the gateway before. */
    static void needsLauncher() {
        needs(
                Files.isReadable(launcher().resolveSibling("routes/target/classpath")),
                "the gateway is not built: run `mvn package` or ./verify from the project's root");
    }

    /** A missing tool is a failure where {@code ISOLINE_CHECKERS=required}. */
    static void needs(boolean there, String otherwise) {
        String checkers = System.getProperty("ISOLINE_CHECKERS", System.getenv("ISOLINE_CHECKERS"));
        if ("required".equals(checkers)) {
            assertThat(there).as(otherwise).isTrue();
        }
        assumeTrue(there, otherwise);
    }

    int mllp() {
        return mllp;
    }

    /**
     * @param under a command that runs another one, with its arguments
     */
    void start(String... under) throws IOException {
        var command = new ArrayList<>(List.of(under));
        command.addAll(List.of(launcher().toString(), "serve", "--config", "isoline.yaml"));
        var builder = new ProcessBuilder(command).directory(folder.toFile());
        builder.environment().put("ISOLINE_NO_BUILD", "1");
        // Lives of a few seconds: what the second compiler would gain is never earned.
        builder.environment().put("JAVA_TOOL_OPTIONS", "-XX:TieredStopAtLevel=1");
        var log = ProcessBuilder.Redirect.appendTo(folder.resolve("gateway.log").toFile());
        process = builder.redirectErrorStream(true).redirectOutput(log).start();
    }

    /** Orders are taken a little earlier than readiness is told. */
    void awaitMllp() throws Exception {
        await(this::isListening);
    }

    void awaitReadiness() throws Exception {
        await(() -> get("/actuator/health/readiness", "").statusCode() == 200);
    }

    /** SIGKILL: nothing of the process runs any more when this returns. */
    void kill() throws InterruptedException {
        var all = new ArrayList<>(process.descendants().toList());
        all.add(process.toHandle());
        all.forEach(ProcessHandle::destroyForcibly);
        all.forEach(p -> p.onExit().join());
    }

    /** As the operator. */
    String get(String path) throws Exception {
        String operator =
                Files.readAllLines(folder.resolve("data/credentials")).stream()
                        .filter(line -> line.startsWith("operator:"))
                        .findFirst()
                        .orElseThrow();
        HttpResponse<String> response = get(path, operator);
        assertThat(response.statusCode()).as(response.body()).isEqualTo(200);
        return response.body();
    }

    @Override
    public void close() throws InterruptedException {
        if (process != null) {
            kill();
        }
    }

    private HttpResponse<String> get(String path, String user) throws Exception {
        byte[] credential = user.getBytes(StandardCharsets.UTF_8);
        var request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + http + path));
        request.timeout(Duration.ofSeconds(60));
        if (!user.isEmpty()) {
            String basic = "Basic " + Base64.getEncoder().encodeToString(credential);
            request.header("Authorization", basic);
        }
        return HTTP.send(request.build(), BodyHandlers.ofString());
    }

    private interface Condition {
        boolean holds() throws Exception;
    }

    private void await(Condition condition) throws Exception {
        long end = System.nanoTime() + START.toNanos();
        while (!holds(condition)) {
            Path log = folder.resolve("gateway.log");
            assertThat(process.isAlive()).as("the gateway ended: %s", log).isTrue();
            assertThat(System.nanoTime()).as("the gateway starts too slowly").isLessThan(end);
            Thread.sleep(50);
        }
    }

    private static boolean holds(Condition condition) throws Exception {
        try {
            return condition.holds();
        } catch (IOException e) {
            return false; // not yet
        }
    }

    private boolean isListening() throws IOException {
        try (var socket = new Socket(InetAddress.getLoopbackAddress(), mllp)) {
            return socket.isConnected();
        }
    }

    private static Path launcher() {
        return Path.of(System.getProperty("isoline.launcher", "../isoline"))
                .toAbsolutePath()
                .normalize();
    }

    private static int freePort() throws IOException {
        try (var socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        }
    }

    // spotless:off
    private String configuration() {
        return """
            server: { address: 127.0.0.1, port: %d }
            isoline:
              data: data
              mllp: { host: 127.0.0.1, port: %d }
              delivery: { first-retry: 100ms, longest-retry: 1s, attempts: 1000 }
              senders:
                harrow-bay:
                  application: HBEHR
                  facility: HARROWBAY
                  authorities: { HARROWBAY: "%s" }
                  zone: Europe/Lisbon
                  destinations: [clinic]
              destinations:%s
            """.formatted(http, mllp, Order.SYSTEM, destinations);
    }
    // spotless:on
}
