package dev.isoline.ledger;

import dev.isoline.ledger.OneByOneLedger.Waiting;
import dev.isoline.mllp.MllpClient;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntFunction;
import java.util.stream.IntStream;

/**
 * Orders over MLLP, from eight connections, against committing the same rows one by one from eight
 * threads. Run by docs/benchmarks/mllp-intake, which has started the gateway. Arguments: the
 * gateway's data folder, its MLLP port, the message of an order, a folder for the other ledgers.
 */
final class IntakeBenchmark {

    private static final int THREADS = 8;
    private static final int ROUNDS = 3;
    private static final Duration WARM_UP = Duration.ofSeconds(Integer.getInteger("warmUp", 40));
    private static final Duration ROUND = Duration.ofSeconds(5);
    private static final Duration ANSWER = Duration.ofSeconds(60);

    /** One acknowledged order. */
    private interface Step {
        void run() throws Exception;
    }

    private record Result(double perSecond, double median, double p99) {}

    private final AtomicInteger number = new AtomicInteger(1_000_000);
    private final int port;
    private final String template;

    private IntakeBenchmark(int port, String template) {
        this.port = port;
        this.template = template;
    }

    public static void main(String[] arguments) throws Exception {
        var benchmark =
                new IntakeBenchmark(
                        Integer.parseInt(arguments[1]), Files.readString(Path.of(arguments[2])));
        // Takes connections and never answers: the outbox waits, and only the intake is at work.
        try (ServerSocket silent = new ServerSocket(Integer.getInteger("silentPort"))) {
            // The first of a clinic brings its clinician and departments too; the rows of the
            // second count.
            benchmark.sendOne();
            benchmark.sendOne();
            benchmark.run(RecordedOrder.in(Path.of(arguments[0])), Path.of(arguments[3]));
        }
    }

    private void sendOne() throws Exception {
        try (var client = connect()) {
            send(client);
        }
    }

    private void run(RecordedOrder order, Path folder) throws Exception {
        System.out.printf(
                "an order is %d rows, %d of them resources%n",
                order.rows(), order.resources().size());
        var gateway = new ArrayList<Result>();
        var inStore = new ArrayList<Result>();
        var inLine = new ArrayList<Result>();
        try (var store = oneByOne(folder.resolve("store"), Waiting.IN_THE_STORE);
                var line = oneByOne(folder.resolve("line"), Waiting.IN_LINE)) {
            measure(i -> gateway(connect()), WARM_UP);
            measure(i -> rows(order, line), ROUND);
            for (int round = 0; round < ROUNDS; round++) {
                gateway.add(measure(i -> gateway(connect()), ROUND));
                inLine.add(measure(i -> rows(order, line), ROUND));
                inStore.add(measure(i -> rows(order, store), ROUND));
            }
        }
        double median = print("gateway over MLLP", gateway, 0);
        print("one by one, waiting in line", inLine, median);
        print("one by one, in the store", inStore, median);
    }

    private static Ledger oneByOne(Path folder, Waiting waiting) {
        return OneByOneLedger.open("", "", "", folder, waiting);
    }

    private Step gateway(MllpClient client) {
        return () -> send(client);
    }

    private Step rows(RecordedOrder order, Ledger ledger) {
        return () -> {
            int key = number.incrementAndGet();
            ledger.write(tables -> order.store(tables, key)).join();
        };
    }

    private MllpClient connect() {
        try {
            return MllpClient.connect("127.0.0.1", port, ANSWER);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void send(MllpClient client) throws IOException {
        String key = Integer.toString(number.incrementAndGet());
        String message =
                template.replace("{control}", "C" + key)
                        .replace("{placer}", "ORDER-" + key)
                        .replace("{patient}", "MR-" + key)
                        .replace('\n', '\r');
        String answer =
                new String(
                        client.send(message.getBytes(StandardCharsets.UTF_8)),
                        StandardCharsets.UTF_8);
        if (!answer.contains("\rMSA|AA|") || answer.contains("\rERR|")) {
            throw new IllegalStateException("not the answer to a complete order: " + answer);
        }
    }

    private static Result measure(IntFunction<Step> steps, Duration time)
            throws InterruptedException {
        var nanos = new ConcurrentLinkedQueue<Long>();
        long end = System.nanoTime() + time.toNanos();
        List<Thread> threads =
                IntStream.range(0, THREADS)
                        .mapToObj(steps)
                        .map(step -> new Thread(() -> repeat(step, end, nanos)))
                        .toList();
        threads.forEach(Thread::start);
        for (Thread thread : threads) {
            thread.join();
        }
        double[] millis = nanos.stream().mapToDouble(n -> n / 1e6).sorted().toArray();
        var result =
                new Result(
                        millis.length / (double) time.toSeconds(),
                        millis[millis.length / 2],
                        millis[millis.length * 99 / 100]);
        System.out.println(result);
        return result;
    }

    private static void repeat(Step step, long end, ConcurrentLinkedQueue<Long> nanos) {
        while (System.nanoTime() < end) {
            long start = System.nanoTime();
            try {
                step.run();
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
            nanos.add(System.nanoTime() - start);
        }
    }

    /** The middle of the rounds; returns its rate. */
    private static double print(String side, List<Result> rounds, double gateway) {
        Result middle =
                rounds.stream()
                        .sorted((a, b) -> Double.compare(a.perSecond(), b.perSecond()))
                        .toList()
                        .get(rounds.size() / 2);
        System.out.printf(
                "%-28s %6.0f orders/s, median %6.1f ms, p99 %7.1f ms%s%n",
                side,
                middle.perSecond(),
                middle.median(),
                middle.p99(),
                gateway > 0
                        ? ", the gateway is %.2f times as fast"
                                .formatted(gateway / middle.perSecond())
                        : "");
        return middle.perSecond();
    }
}
