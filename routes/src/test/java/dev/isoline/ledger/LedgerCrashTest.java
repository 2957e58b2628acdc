package dev.isoline.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What was acknowledged is there after {@code kill -9}. The server of PostgreSQL lives on. */
class LedgerCrashTest {

    private static final int ROUNDS = 3;

    @TempDir Path folder;

    @Test
    void sqlite_keeps_what_it_acknowledged() throws Exception {
        keepsWhatItAcknowledged("");
    }

    @Test
    void postgresql_keeps_what_it_acknowledged() throws Exception {
        keepsWhatItAcknowledged(PostgresServer.newDatabase());
    }

    private void keepsWhatItAcknowledged(String url) throws Exception {
        var random = new Random(42);
        var acknowledged = new ArrayList<String>();
        for (int round = 0; round < ROUNDS; round++) {
            acknowledged.addAll(killed(url, "r" + round + "-", 100 + random.nextInt(900)));
            try (Ledger ledger = LedgerFactory.open(url, "postgres", "", folder)) {
                assertThat(acknowledged).hasSizeGreaterThan(round);
                assertThat(missing(ledger, acknowledged)).isEmpty();
            }
        }
    }

    /** The numbers a writer acknowledged before it was killed, some time after its first. */
    private List<String> killed(String url, String prefix, long millis)
            throws IOException, InterruptedException {
        Process writer =
                new ProcessBuilder(
                                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                                "-cp",
                                System.getProperty("java.class.path"),
                                LedgerWriter.class.getName(),
                                url.isEmpty() ? "-" : url,
                                folder.toString(),
                                prefix)
                        .redirectError(ProcessBuilder.Redirect.INHERIT)
                        .start();
        var killer = new Thread(() -> kill(writer, millis));
        var acknowledged = new ArrayList<String>();
        try (var lines = writer.inputReader(StandardCharsets.UTF_8)) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                if (line.startsWith(prefix)) {
                    acknowledged.add(line);
                }
                if (acknowledged.size() == 1 && killer.getState() == Thread.State.NEW) {
                    killer.start();
                }
            }
        } finally {
            writer.destroyForcibly().waitFor(10, TimeUnit.SECONDS);
        }
        return acknowledged;
    }

    private static List<String> missing(Ledger ledger, List<String> numbers) {
        return ledger.read(t -> numbers.stream().filter(number -> !isWhole(t, number)).toList());
    }

    private static boolean isWhole(Tables tables, String number) {
        return tables.messages().accepted("mllp", "A|B", number).isPresent()
                && tables.deliveries().ofOrder(number).size() == 1;
    }

    /** SIGKILL; by its handle, because the process itself would close the stream still read. */
    private static void kill(Process process, long millis) {
        try {
            Thread.sleep(millis);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        process.toHandle().destroyForcibly();
    }
}
