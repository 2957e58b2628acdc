package dev.isoline.conformance.gateway;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The gateway under strace: an answer follows a sync, and connections share one. */
class SyncTest {

    private static final int CONNECTIONS = 8;
    private static final int EACH = 25;

    @TempDir private Path folder;

    @Test
    void one_connection_gets_a_sync_for_each_answer_and_eight_share_them() throws Exception {
        GatewayUnderTest.needsLauncher();
        GatewayUnderTest.needs(
                Files.isExecutable(Path.of("/usr/bin/strace")), "needs strace in /usr/bin");
        try (var gateway = new GatewayUnderTest(folder, " {}")) {
            gateway.start(
                    "/usr/bin/strace", "-f", "-e", "trace=fsync,fdatasync", "-o", "syncs.txt");
            gateway.awaitReadiness();
            long before = syncs();
            new OrderingClinic(CONNECTIONS).sendAll(gateway.mllp(), EACH);
            long between = syncs();
            assertThat(between - before).isGreaterThanOrEqualTo(EACH);
            sendAtOnce(gateway.mllp());
            // a commit may hold one answer of each connection, no more
            assertThat(syncs() - between).isBetween((long) EACH, (long) CONNECTIONS * EACH);
        }
    }

    private static void sendAtOnce(int port) {
        var senders =
                IntStream.range(0, CONNECTIONS)
                        .mapToObj(OrderingClinic::new)
                        .map(clinic -> CompletableFuture.runAsync(() -> send(clinic, port)))
                        .toList();
        senders.forEach(CompletableFuture::join);
    }

    private static void send(OrderingClinic clinic, int port) {
        try {
            clinic.sendAll(port, EACH);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Calls begun so far; a call that ends later has a second line without parenthesis. */
    private long syncs() throws Exception {
        try (Stream<String> calls = Files.lines(folder.resolve("syncs.txt"))) {
            return calls.filter(line -> line.contains("sync(")).count();
        }
    }
}
