package dev.isoline.conformance.demo;

import java.io.Closeable;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.TimeUnit;

/** The gateway as a process of its own: {@code isoline serve --config FILE}. */
final class GatewayProcess implements Closeable {

    /**
     * Long enough for a machine that is busy with other work; a process that ends is noticed at
     * once.
     */
    private static final Duration START = Duration.ofMinutes(5);

    private static final Duration STOP = Duration.ofSeconds(15);

    private final Process process;
    private final Path log;
    private final Thread atExit;

    private GatewayProcess(Process process, Path log) {
        this.process = process;
        this.log = log;
        this.atExit = new Thread(this::kill);
        Runtime.getRuntime().addShutdownHook(atExit);
    }

    static GatewayProcess start(Path launcher, Path configuration, Path log) throws IOException {
        var builder =
                new ProcessBuilder(
                        launcher.toString(), "serve", "--config", configuration.toString());
        builder.environment().put("ISOLINE_NO_BUILD", "1"); // what runs here is built already
        Process process = builder.redirectErrorStream(true).redirectOutput(log.toFile()).start();
        return new GatewayProcess(process, log);
    }

    /** Returns once the gateway says that it is ready. */
    void awaitReadiness(int port) throws DemoFailure, InterruptedException {
        URI readiness = URI.create("http://127.0.0.1:" + port + "/actuator/health/readiness");
        long end = System.nanoTime() + START.toNanos();
        while (!isReady(readiness)) {
            if (!process.isAlive()) {
                throw new DemoFailure("The gateway ended while it started; see " + log + ".");
            }
            if (System.nanoTime() > end) {
                throw new DemoFailure(
                        "The gateway was not ready after "
                                + START.toSeconds()
                                + " s; see "
                                + log
                                + ".");
            }
            Thread.sleep(200);
        }
    }

    private static boolean isReady(URI readiness) throws InterruptedException {
        var request = HttpRequest.newBuilder(readiness).timeout(Duration.ofSeconds(5)).build();
        try {
            return HttpClient.newHttpClient().send(request, BodyHandlers.discarding()).statusCode()
                    == 200;
        } catch (IOException e) {
            return false;
        }
    }

    @Override
    public void close() {
        Runtime.getRuntime().removeShutdownHook(atExit);
        process.descendants().forEach(ProcessHandle::destroy);
        process.destroy();
        try {
            if (!process.waitFor(STOP.toSeconds(), TimeUnit.SECONDS)) {
                kill();
            }
        } catch (InterruptedException e) {
            kill();
            Thread.currentThread().interrupt();
        }
    }

    private void kill() {
        process.descendants().forEach(ProcessHandle::destroyForcibly);
        process.destroyForcibly();
    }
}
