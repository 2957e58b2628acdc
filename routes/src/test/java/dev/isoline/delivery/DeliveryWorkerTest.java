package dev.isoline.delivery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import dev.isoline.delivery.FhirPartner.Answer;
import dev.isoline.ledger.DeliveryTable.DeliveryRow;
import dev.isoline.ledger.DeliveryTable.NewDelivery;
import dev.isoline.ledger.DeliveryTable.State;
import dev.isoline.ledger.Ledger;
import dev.isoline.ledger.LedgerFactory;
import dev.isoline.ledger.TimelineTable.Entry;
import dev.isoline.settings.IsolineProperties.DeliverySettings;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The outbox over a real ledger and a real HTTP partner. */
class DeliveryWorkerTest {

    private static final Answer DOWN = new Answer(503, "");
    private static final DeliverySettings SETTINGS =
            new DeliverySettings(
                    Duration.ofSeconds(1), Duration.ofSeconds(5), 6, Duration.ofSeconds(10));

    @TempDir Path folder;
    private final SettableClock clock = new SettableClock();
    private FhirPartner partner;
    private Ledger ledger;
    private DeliveryWorker worker;

    @BeforeEach
    void start() throws Exception {
        partner = new FhirPartner();
        ledger = LedgerFactory.open("", "", "", folder);
        worker = started();
    }

    @AfterEach
    void stop() {
        worker.close();
        ledger.close();
        partner.close();
    }

    @Test
    void deliveries_of_a_lane_arrive_in_order_once_each() {
        for (int i = 0; i < 10; i++) {
            add("o1", "a" + i);
            add("o2", "b" + i);
        }
        await().until(() -> partner.requests.size() == 20 && isEmpty());
        assertThat(partner.bodies().stream().filter(b -> b.startsWith("a")))
                .containsExactly("a0", "a1", "a2", "a3", "a4", "a5", "a6", "a7", "a8", "a9");
        assertThat(partner.bodies().stream().filter(b -> b.startsWith("b"))).isSorted().hasSize(10);
    }

    @Test
    void a_failing_head_holds_up_its_own_lane_only() {
        partner.answers = body -> body.equals("a0") ? DOWN : FhirPartner.STORED;
        long head = add("o1", "a0");
        add("o1", "a1");
        add("o2", "b0");
        await().until(() -> row(head).attempts() == 1 && partner.bodies().contains("b0"));
        assertThat(row(head).lastError()).isEqualTo("HTTP 503");

        partner.answers = body -> FhirPartner.STORED;
        clock.move(Duration.ofSeconds(1));
        await().until(this::isEmpty);
        assertThat(partner.bodies().stream().filter(b -> b.startsWith("a")))
                .containsExactly("a0", "a0", "a1");
    }

    @Test
    void pauses_double_up_to_the_longest_and_then_it_is_parked() {
        partner.answers = body -> DOWN;
        long id = add("o1", "a0");
        for (int pause : List.of(1, 2, 4, 5, 5)) {
            Instant next = clock.instant().plusSeconds(pause);
            await().until(() -> row(id).nextTry().equals(next));
            clock.move(Duration.ofSeconds(pause));
        }
        await().until(() -> row(id).state() == State.PARKED);
        assertThat(row(id).lastError()).isEqualTo("HTTP 503, 6 attempts");
        assertThat(partner.bodies()).containsExactly("a0", "a0", "a0", "a0", "a0", "a0");
        assertThat(timeline("o1")).containsExactly("parked");
    }

    @Test
    void what_the_receiver_refuses_is_parked_at_once_and_its_lane_waits_for_a_person() {
        partner.answers = body -> body.equals("a0") ? new Answer(422, "") : FhirPartner.STORED;
        long head = add("o1", "a0");
        long next = add("o1", "a1");
        await().until(() -> row(head).state() == State.PARKED);
        clock.move(Duration.ofDays(1));
        add("o2", "b0");
        await().until(() -> partner.bodies().contains("b0"));
        assertThat(row(next).state()).isEqualTo(State.PENDING);
        assertThat(partner.bodies()).doesNotContain("a1");

        partner.answers = body -> FhirPartner.STORED;
        ledger.write(
                        t -> {
                            t.deliveries().resume(head, clock.instant());
                            return null;
                        })
                .join();
        await().until(this::isEmpty);
        assertThat(timeline("o1")).containsExactly("parked", "delivered", "delivered");
    }

    @Test
    void a_new_worker_goes_on_where_the_old_one_stopped() {
        partner.answers = body -> DOWN;
        long id = add("o1", "a0");
        add("o1", "a1");
        await().until(() -> row(id).attempts() == 1);
        worker.close();
        ledger.close();

        partner.answers = body -> FhirPartner.STORED;
        clock.move(Duration.ofSeconds(1));
        ledger = LedgerFactory.open("", "", "", folder);
        worker = started();
        await().until(this::isEmpty);
        assertThat(partner.bodies()).containsExactly("a0", "a0", "a1");
    }

    @Test
    void a_delivery_claimed_by_a_process_that_died_is_sent_after_the_restart() {
        worker.close();
        add("o1", "a0");
        Instant now = clock.instant();
        Instant until = now.plus(Duration.ofDays(1));
        ledger.write(t -> t.deliveries().claim("partner", now, until, 9)).join();
        ledger.close();

        ledger = LedgerFactory.open("", "", "", folder);
        worker = started();
        await().until(this::isEmpty);
        assertThat(partner.bodies()).containsExactly("a0");
    }

    @Test
    void two_workers_on_one_outbox_send_nothing_twice() {
        try (var second = started()) {
            for (int i = 0; i < 100; i++) {
                add("o" + i, "x" + i);
            }
            await().until(this::isEmpty);
        }
        assertThat(partner.bodies()).hasSize(100).doesNotHaveDuplicates();
    }

    @Test
    void closing_gives_back_what_was_not_answered_without_counting_it() {
        var gate = new CountDownLatch(1);
        partner.answers =
                body -> {
                    awaitGate(gate);
                    return FhirPartner.STORED;
                };
        long id = add("o1", "a0");
        await().until(() -> partner.requests.size() == 1);
        worker.close();
        assertThat(row(id).state()).isEqualTo(State.PENDING);
        assertThat(row(id).attempts()).isZero();
        gate.countDown();

        worker = started();
        await().until(this::isEmpty);
        assertThat(partner.bodies()).containsExactly("a0", "a0");
    }

    private DeliveryWorker started() {
        var destination =
                new FhirDestination(partner.url(), "", SETTINGS.timeout(), Optional.empty());
        var started = new DeliveryWorker(ledger, Map.of("partner", destination), SETTINGS, clock);
        started.start();
        return started;
    }

    private long add(String order, String payload) {
        byte[] bytes = payload.getBytes(StandardCharsets.UTF_8);
        var delivery =
                new NewDelivery(
                        "partner",
                        order,
                        "status",
                        "application/fhir+json",
                        bytes,
                        null,
                        clock.instant());
        return ledger.write(t -> t.deliveries().add(delivery)).join();
    }

    private DeliveryRow row(long id) {
        return ledger.read(t -> t.deliveries().byId(id)).orElseThrow();
    }

    private boolean isEmpty() {
        return Set.of(State.PENDING, State.PARKED).stream()
                .allMatch(s -> ledger.read(t -> t.deliveries().byState(s, 1)).isEmpty());
    }

    private List<String> timeline(String order) {
        return ledger.read(t -> t.timeline().of(order)).stream().map(Entry::event).toList();
    }

    private static void awaitGate(CountDownLatch gate) {
        try {
            gate.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
