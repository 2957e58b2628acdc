package dev.isoline.conformance.gateway;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import dev.isoline.conformance.partner.FhirPartner;
import dev.isoline.conformance.partner.MllpListener;
import dev.isoline.conformance.validator.Er7;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code kill -9} under load: what was acknowledged is there, and nothing is told twice. */
class CrashTest {

    private static final int KILLS = Integer.getInteger("isoline.kills", 20);
    private static final int CONNECTIONS = 6;
    private static final int MOST_ANSWERS = 50;
    private static final Duration PATIENCE = Duration.ofMinutes(2);
    private static final int PAGE = 50;

    private final List<OrderingClinic> clinics =
            IntStream.range(0, CONNECTIONS).mapToObj(OrderingClinic::new).toList();
    private final Random random = new Random(20);

    @TempDir private Path folder;

    @Test
    void after_20_kills_nothing_acknowledged_is_missing_and_nothing_told_under_two_ids()
            throws Exception {
        GatewayUnderTest.needsLauncher();
        try (var monitoring = new FhirPartner();
                var clinic = new MllpListener();
                var gateway = new GatewayUnderTest(folder, destinations(monitoring, clinic))) {
            for (int kill = 0; kill < KILLS; kill++) {
                liveAndDie(gateway);
            }
            gateway.start();
            gateway.awaitReadiness();
            for (OrderingClinic each : clinics) {
                each.sendAll(gateway.mllp(), 1);
            }
            judgeAnswers();
            assertThat(missing(gateway, orders())).as("acknowledged, but not stored").isEmpty();
            judgeForwarded(monitoring);
            judgeTold(clinic);
        }
    }

    /** The kill comes anywhere between the first answers and the fiftieth. */
    private void liveAndDie(GatewayUnderTest gateway) throws Exception {
        gateway.start();
        gateway.awaitMllp();
        var load =
                clinics.stream()
                        .map(c -> (Runnable) () -> c.sendUntilCutOff(gateway.mllp()))
                        .map(CompletableFuture::runAsync)
                        .toList();
        awaitAnswers(orders().size() + 1 + random.nextInt(MOST_ANSWERS));
        gateway.kill();
        load.forEach(CompletableFuture::join);
    }

    private void awaitAnswers(int count) throws InterruptedException {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (orders().size() < count) {
            assertThat(System.nanoTime()).as("orders are not answered").isLessThan(end);
            Thread.sleep(1);
        }
    }

    private Set<String> orders() {
        return clinics.stream()
                .flatMap(clinic -> clinic.answers().keySet().stream())
                .map(Order::number)
                .collect(Collectors.toSet());
    }

    /** Every order is accepted, sent once or twice; the second answer is the first (ch. 2.9.2). */
    private void judgeAnswers() {
        for (OrderingClinic each : clinics) {
            assertThat(each.repeated()).as("sent twice").isNotEmpty();
            each.answers().forEach(CrashTest::accepted);
            each.repeated()
                    .forEach(
                            (order, again) ->
                                    assertThat(again).isEqualTo(each.answers().get(order)));
        }
    }

    private static void accepted(Order order, byte[] answer) {
        Er7 ack = Er7.of(answer);
        assertThat(ack.field("MSA", 1)).as(ack.text()).isEqualTo("AA");
        assertThat(ack.field("MSA", 2)).isEqualTo(order.controlId());
        assertThat(ack.segments("ERR")).isEmpty();
    }

    /** Orders the FHIR API does not find by their placer number. */
    private static Set<String> missing(GatewayUnderTest gateway, Set<String> numbers)
            throws Exception {
        var missing = new HashSet<>(numbers);
        var all = List.copyOf(numbers);
        for (int at = 0; at < all.size(); at += PAGE) {
            String any =
                    all.subList(at, Math.min(all.size(), at + PAGE)).stream()
                            .map(number -> Order.SYSTEM + "%7C" + number)
                            .collect(Collectors.joining(","));
            String found =
                    gateway.get("/fhir/ServiceRequest?_count=" + PAGE + "&identifier=" + any);
            missing.removeAll(new ObjectMapper().readTree(found).findValuesAsText("value"));
        }
        return missing;
    }

    /** At least once: a copy may come again, but then it is the same. */
    private void judgeForwarded(FhirPartner monitoring) throws InterruptedException {
        Set<String> orders = orders();
        awaitAll(orders, () -> monitoring.inbox().all().stream().map(r -> r.json()));
        var copies = byOrder(monitoring.inbox().all(), r -> r.json(), r -> r.json());
        assertThat(copies.keySet()).isEqualTo(orders);
        copies.forEach((order, different) -> assertThat(different).as(order).hasSize(1));
    }

    private void judgeTold(MllpListener clinic) throws InterruptedException {
        Set<String> orders = orders();
        awaitAll(orders, () -> clinic.inbox().all().stream().map(CrashTest::text));
        var all = clinic.inbox().all();
        byOrder(all, CrashTest::text, m -> Er7.of(m).field("MSH", 10))
                .forEach((order, ids) -> assertThat(ids).as(order).hasSize(1));
        byOrder(all, CrashTest::text, CrashTest::text)
                .forEach((order, texts) -> assertThat(texts).as(order).hasSize(1));
    }

    private static void awaitAll(Set<String> orders, Supplier<Stream<String>> received)
            throws InterruptedException {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (!received.get().map(Order::numberIn).collect(Collectors.toSet()).containsAll(orders)
                && System.nanoTime() < end) {
            Thread.sleep(200);
        }
    }

    /** What came about each order, without repetition. */
    private static <T> Map<String, Set<String>> byOrder(
            Collection<T> received, Function<T, String> text, Function<T, String> what) {
        var byOrder = new HashMap<String, Set<String>>();
        for (T each : received) {
            byOrder.computeIfAbsent(Order.numberIn(text.apply(each)), n -> new HashSet<>())
                    .add(what.apply(each));
        }
        return byOrder;
    }

    private static String text(byte[] message) {
        return new String(message, StandardCharsets.UTF_8);
    }

    private static String destinations(FhirPartner monitoring, MllpListener clinic) {
        return """

                tern-street: { kind: fhir, url: "%s", receives: [orders] }
                clinic: { kind: mllp, url: "%s", receives: [status], application: HBEHR }
            """
                .formatted(monitoring.url(), clinic.url())
                .indent(2);
    }
}
