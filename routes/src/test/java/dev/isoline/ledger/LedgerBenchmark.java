package dev.isoline.ledger;

import dev.isoline.ledger.OneByOneLedger.Waiting;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.IntStream;

/**
 * Group commit against committing the same rows one by one, from eight threads, on the same store,
 * in one run. Run by docs/benchmarks/ledger. Argument: sqlite or postgres.
 */
final class LedgerBenchmark {

    private static final int THREADS = 8;
    private static final int ROUNDS = 3;
    private static final Duration ROUND = Duration.ofSeconds(3);

    /** The sides, in the order they take turns in each round. */
    private enum Side {
        GROUP_COMMIT,
        ONE_BY_ONE_WAITING_IN_THE_STORE,
        ONE_BY_ONE_WAITING_IN_LINE
    }

    private record Result(double perSecond, double median, double p99) {}

    private LedgerBenchmark() {}

    public static void main(String[] arguments) throws Exception {
        boolean postgres = arguments.length > 0 && arguments[0].equals("postgres");
        var best = new EnumMap<Side, Result>(Side.class);
        for (int round = 0; round <= ROUNDS; round++) {
            for (Side side : Side.values()) {
                Result result = run(side, postgres ? PostgresServer.newDatabase() : "");
                if (round > 0) { // the first warms up
                    best.merge(side, result, (a, b) -> a.perSecond > b.perSecond ? a : b);
                }
            }
        }
        print(best);
    }

    private static Result run(Side side, String url) throws Exception {
        Path folder = Files.createTempDirectory("isoline-benchmark");
        try (Ledger ledger = open(side, url, folder)) {
            return measure(ledger);
        } finally {
            for (String file : new String[] {"", "-wal", "-shm"}) {
                Files.deleteIfExists(folder.resolve(SqliteStore.FILE + file));
            }
            Files.deleteIfExists(folder.resolve("isoline.lock"));
            Files.delete(folder);
        }
    }

    private static Ledger open(Side side, String url, Path folder) {
        return switch (side) {
            case GROUP_COMMIT -> LedgerFactory.open(url, "postgres", "", folder);
            case ONE_BY_ONE_WAITING_IN_THE_STORE ->
                    OneByOneLedger.open(url, "postgres", "", folder, Waiting.IN_THE_STORE);
            case ONE_BY_ONE_WAITING_IN_LINE ->
                    OneByOneLedger.open(url, "postgres", "", folder, Waiting.IN_LINE);
        };
    }

    private static Result measure(Ledger ledger) throws InterruptedException {
        var nanos = new ConcurrentLinkedQueue<Long>();
        long end = System.nanoTime() + ROUND.toNanos();
        var threads =
                IntStream.range(0, THREADS)
                        .mapToObj(i -> new Thread(() -> write(ledger, "t" + i, end, nanos)))
                        .toList();
        threads.forEach(Thread::start);
        for (Thread thread : threads) {
            thread.join();
        }
        double[] millis = nanos.stream().mapToDouble(n -> n / 1e6).sorted().toArray();
        return new Result(
                millis.length / (double) ROUND.toSeconds(),
                millis[millis.length / 2],
                millis[millis.length * 99 / 100]);
    }

    private static void write(
            Ledger ledger, String prefix, long end, ConcurrentLinkedQueue<Long> nanos) {
        for (int i = 0; System.nanoTime() < end; i++) {
            var order = new BenchmarkOrder(prefix + "-" + i);
            long start = System.nanoTime();
            ledger.write(order::store).join();
            nanos.add(System.nanoTime() - start);
        }
    }

    private static void print(Map<Side, Result> results) {
        Side[] sides = Side.values();
        double group = results.get(Side.GROUP_COMMIT).perSecond();
        System.out.println("orders/s  median ms  p99 ms  group commit is  side");
        Arrays.stream(sides)
                .forEach(
                        side -> {
                            Result r = results.get(side);
                            System.out.printf(
                                    "%8.0f %10.2f %7.2f %14.2fx  %s%n",
                                    r.perSecond(),
                                    r.median(),
                                    r.p99(),
                                    group / r.perSecond(),
                                    side.name().toLowerCase().replace('_', ' '));
                        });
    }
}
