package dev.isoline.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatObject;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.ledger.DeliveryTable.DeliveryRow;
import dev.isoline.ledger.DeliveryTable.NewDelivery;
import dev.isoline.ledger.MessageTable.NewMessage;
import dev.isoline.ledger.OrderTable.OrderRow;
import dev.isoline.ledger.RecordingTable.RecordingRow;
import dev.isoline.ledger.ResourceTable.Criterion;
import dev.isoline.ledger.ResourceTable.IndexEntry;
import dev.isoline.ledger.ResourceTable.StoredResource;
import dev.isoline.order.OrderState;
import dev.isoline.order.Problem;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import org.assertj.core.api.ListAssert;
import org.assertj.core.api.ObjectAssert;
import org.assertj.core.api.OptionalAssert;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What the ledger promises, on either store. */
abstract class LedgerContract {

    static final Instant NOON = Instant.parse("2026-11-25T12:00:00.123456Z");

    private Ledger ledger;

    abstract Ledger open() throws Exception;

    @BeforeEach
    void start() throws Exception {
        ledger = open();
    }

    @AfterEach
    void stop() {
        if (ledger != null) {
            ledger.close();
        }
    }

    @Test
    void a_message_and_its_answer_come_back_byte_for_byte() throws Exception {
        byte[] raw = {0, 13, (byte) 0xfc, 10};
        long id = write(t -> t.messages().insert(message("C1", raw)));
        optional(t -> t.messages().accepted("mllp", "EHR|CLINIC", "C1")).isEmpty();

        write(t -> answered(t, id, "AA"));

        var stored = read(t -> t.messages().accepted("mllp", "EHR|CLINIC", "C1")).orElseThrow();
        assertThat(stored.id()).isEqualTo(id);
        assertThat(stored.message().raw()).isEqualTo(raw);
        assertThat(stored.message().receivedAt()).isEqualTo(NOON);
        assertThat(stored.answer()).asString().isEqualTo("AA");
        assertThat(stored.outcome()).isEqualTo("AA");
    }

    @Test
    void one_control_id_of_a_sender_is_accepted_once() throws Exception {
        long refused = write(t -> t.messages().insert(message("C1", new byte[1])));
        long first = write(t -> t.messages().insert(message("C1", new byte[2])));
        long second = write(t -> t.messages().insert(message("C1", new byte[3])));
        write(t -> answered(t, refused, "AE"));
        write(t -> answered(t, first, "AA"));

        assertThatThrownBy(() -> write(t -> answered(t, second, "AA")))
                .hasCauseInstanceOf(LedgerException.class);
        assertThat(read(t -> t.messages().accepted("mllp", "EHR|CLINIC", "C1")).orElseThrow().id())
                .isEqualTo(first);
    }

    @Test
    void messages_without_control_id_are_all_accepted() throws Exception {
        for (int i = 0; i < 2; i++) {
            long id = write(t -> t.messages().insert(message("", new byte[1])));
            write(t -> answered(t, id, "AA"));
            assertThat(read(t -> t.messages().byId(id)).orElseThrow().outcome()).isEqualTo("AA");
        }
    }

    @Test
    void a_resource_keeps_its_versions_and_only_the_newest_is_found() throws Exception {
        var old = new IndexEntry("identifier", "urn:oid:2.999.1", "1");
        var now = new IndexEntry("identifier", "urn:oid:2.999.1", "2");
        write(t -> t.resources().put("Patient", "p", "{\"v\":1}", List.of(old, old), NOON));
        var second = write(t -> t.resources().put("Patient", "p", "{\"v\":2}", List.of(now), NOON));

        assertThat(second).isEqualTo(new StoredResource("Patient", "p", 2, NOON, "{\"v\":2}"));
        optional(t -> t.resources().get("Patient", "p")).contains(second);
        assertThat(read(t -> t.resources().version("Patient", "p", 1)).orElseThrow().json())
                .isEqualTo("{\"v\":1}");
        assertThat(find("identifier", "urn:oid:2.999.1", "1")).isEmpty();
        assertThat(find("identifier", "urn:oid:2.999.1", "2")).containsExactly("p");
        assertThat(find("identifier", null, "2")).containsExactly("p");
        assertThat(find("identifier", "urn:oid:2.999.2", "2")).isEmpty();
        value(t -> t.resources().count("Patient", List.of())).isEqualTo(1);
    }

    @Test
    void a_search_meets_all_criteria_and_any_of_their_values() throws Exception {
        put("a", 1, "final", "p1");
        put("b", 2, "preliminary", "p1");
        put("c", 3, "final", "p2");
        put("d", 4, "registered", "p1");
        var status = new Criterion("status", null, List.of("final", "preliminary"));
        var subject = new Criterion("subject", "Patient", List.of("p1"));

        assertThat(search(List.of(status, subject), 0, 10)).containsExactly("b", "a");
        assertThat(search(List.of(), 1, 2)).containsExactly("c", "b");
        value(t -> t.resources().count("Observation", List.of(status))).isEqualTo(3);
        assertThat(search(List.of(new Criterion("status", "", List.of("final"))), 0, 9))
                .containsExactly("c", "a");
    }

    @Test
    void a_search_finds_values_that_begin_so_whatever_their_characters() throws Exception {
        for (String name : List.of("quill", "quillfeather", "qu\uD83D\uDE00", "r", "Q")) {
            var entry = new IndexEntry("family", "", name);
            write(t -> t.resources().put("Observation", name, "{}", List.of(entry), NOON));
        }
        assertThat(search(List.of(beginning("quill")), 0, 9))
                .containsExactlyInAnyOrder("quill", "quillfeather");
        assertThat(search(List.of(beginning("qu", "r")), 0, 9))
                .containsExactlyInAnyOrder("quill", "quillfeather", "qu\uD83D\uDE00", "r");
        assertThat(search(List.of(beginning("quillx")), 0, 9)).isEmpty();
        assertThat(search(List.of(new Criterion(Criterion.ID, null, List.of("r", "s"))), 0, 9))
                .containsExactly("r");
    }

    private static Criterion beginning(String... names) {
        return new Criterion("family", null, List.of(names), true);
    }

    @Test
    void an_order_is_found_by_each_of_its_numbers() throws Exception {
        OrderRow row = order("o", "urn:a", "P1");
        run(t -> t.orders().insert(row));

        optional(t -> t.orders().byId("o")).contains(row);
        optional(t -> t.orders().byPlacer("urn:a", "P1")).contains(row);
        optional(t -> t.orders().byPlacer("urn:b", "P1")).isEmpty();
        for (String number : List.of("P1", "F-o", "A-o")) {
            listed(t -> t.orders().byNumber(number)).containsExactly(row);
        }
        listed(t -> t.orders().byPatient("patient")).containsExactly(row);
        listed(t -> t.orders().byState(OrderState.ON_HOLD, 9)).containsExactly(row);
    }

    @Test
    void an_order_moves_on() throws Exception {
        run(t -> t.orders().insert(order("o", "urn:a", "P1")));
        var moved =
                order("o", "urn:a", "P1")
                        .with(List.of())
                        .due(NOON)
                        .with(OrderState.REVIEW, NOON.plusSeconds(1));
        run(t -> t.orders().update(moved));

        optional(t -> t.orders().byId("o")).contains(moved);
        listed(t -> t.orders().byState(OrderState.ON_HOLD, 9)).isEmpty();
    }

    @Test
    void a_placer_order_number_is_unique_within_its_namespace() throws Exception {
        run(t -> t.orders().insert(order("o1", "urn:a", "P1")));
        run(t -> t.orders().insert(order("o2", "urn:b", "P1")));

        assertThatThrownBy(() -> run(t -> t.orders().insert(order("o3", "urn:a", "P1"))))
                .hasCauseInstanceOf(LedgerException.class)
                .hasMessageNotContaining("P1");
        listed(t -> t.orders().byNumber("P1")).hasSize(2);
    }

    @Test
    void timeline_audit_and_recordings_come_back_as_written() throws Exception {
        var entry = new TimelineTable.Entry("o", NOON, "received", "EHR", "");
        var event = new AuditTable.Event(NOON, "operator", "read", "Patient/p", "200");
        var recording =
                new RecordingRow(
                        "r", "ab", null, "x.edf", "s", RecordingTable.State.HELD, "no order", NOON);
        run(
                t -> {
                    t.timeline().add(entry);
                    t.audit().add(event);
                    t.recordings().insert(recording);
                });

        listed(t -> t.timeline().of("o")).containsExactly(entry);
        listed(t -> t.audit().of("Patient/p")).containsExactly(event);
        optional(t -> t.recordings().bySha256("ab")).contains(recording);
        listed(t -> t.recordings().byState(RecordingTable.State.HELD, 9))
                .containsExactly(recording);
        var analysed =
                new RecordingRow(
                        "r", "ab", "o", "x.edf", "s", RecordingTable.State.ANALYSED, "", NOON);
        run(t -> t.recordings().update(analysed));
        optional(t -> t.recordings().byId("r")).contains(analysed);
    }

    @Test
    void only_the_head_of_a_lane_is_due() throws Exception {
        long first = add("x", "o1");
        long second = add("x", "o1");
        long other = add("x", "o2");
        long elsewhere = add("y", "o1");
        assertThat(due(NOON)).containsExactly(first, other, elsewhere);
        assertThat(due(NOON.minusMillis(1))).isEmpty();

        run(t -> t.deliveries().retry(first, NOON.plusSeconds(5), "connection refused"));
        assertThat(due(NOON)).containsExactly(other, elsewhere);
        run(t -> t.deliveries().park(first, "HTTP 422"));
        assertThat(due(NOON.plusSeconds(60))).containsExactly(other, elsewhere);

        DeliveryRow parked = read(t -> t.deliveries().byId(first)).orElseThrow();
        assertThat(parked.state()).isEqualTo(DeliveryTable.State.PARKED);
        assertThat(parked.attempts()).isEqualTo(2);
        assertThat(parked.lastError()).isEqualTo("HTTP 422");
        run(t -> t.deliveries().resume(first, NOON));
        assertThat(due(NOON)).contains(first).doesNotContain(second);
        run(t -> t.deliveries().delivered(first, NOON, "200"));
        assertThat(due(NOON)).contains(second);
        value(t -> t.deliveries().receipt(first)).isEqualTo("200");
    }

    @Test
    void a_claimed_delivery_is_due_for_nobody_until_the_claim_ends() throws Exception {
        long id = add("x", "o1");
        Instant until = NOON.plusSeconds(60);
        assertThat(claim("x", NOON, until)).containsExactly(id);
        assertThat(claim("x", NOON, until)).isEmpty();
        assertThat(due(NOON)).isEmpty();
        assertThat(claim("x", until, until.plusSeconds(60))).containsExactly(id);
    }

    @Test
    void a_delivery_comes_back_byte_for_byte() throws Exception {
        var bytes =
                new NewDelivery(
                        "x",
                        "o",
                        "oru",
                        "x-application/hl7-v2+er7",
                        new byte[] {0, 11},
                        null,
                        NOON);
        var file = new NewDelivery("x", "o", "object", "application/dicom", null, "a/b.dcm", NOON);
        write(t -> t.deliveries().add(bytes));
        write(t -> t.deliveries().add(file));

        List<DeliveryRow> rows = read(t -> t.deliveries().ofOrder("o"));
        assertThat(rows.get(0).delivery().payload()).containsExactly(0, 11);
        assertThat(rows.get(0).nextTry()).isEqualTo(NOON);
        assertThat(rows.get(1).delivery()).isEqualTo(file);
        listed(t -> t.deliveries().byState(DeliveryTable.State.PENDING, 1)).hasSize(1);
    }

    @Test
    void a_unit_that_throws_is_undone_alone() throws Exception {
        var all = new ArrayList<CompletableFuture<Long>>();
        for (int i = 0; i < 200; i++) {
            boolean fails = i % 3 == 0;
            String number = "P" + i;
            all.add(
                    ledger.write(
                            t -> {
                                t.orders().insert(order(number, "urn:a", number));
                                if (fails) {
                                    throw new IllegalStateException("refused");
                                }
                                return 1L;
                            }));
        }
        for (int i = 0; i < 200; i++) {
            String number = "P" + i;
            boolean written = i % 3 != 0;
            CompletableFuture<Long> future = all.get(i);
            if (written) {
                future.get(30, TimeUnit.SECONDS);
            } else {
                assertThatThrownBy(() -> future.get(30, TimeUnit.SECONDS))
                        .isInstanceOf(ExecutionException.class)
                        .hasCauseInstanceOf(IllegalStateException.class);
            }
            assertThat(read(t -> t.orders().byId(number)).isPresent()).isEqualTo(written);
        }
    }

    @Test
    void a_unit_whose_statement_fails_leaves_its_neighbours_alone() throws Exception {
        run(t -> t.orders().insert(order("o", "urn:a", "P")));
        var before = ledger.write(t -> put(t, "before"));
        var failing =
                ledger.write(
                        t -> {
                            t.orders().insert(order("o", "urn:a", "P"));
                            return 1;
                        });
        var after = ledger.write(t -> put(t, "after"));

        before.get(30, TimeUnit.SECONDS);
        after.get(30, TimeUnit.SECONDS);
        assertThatThrownBy(() -> failing.get(30, TimeUnit.SECONDS))
                .hasCauseInstanceOf(LedgerException.class);
        optional(t -> t.resources().get("Patient", "before")).isPresent();
        optional(t -> t.resources().get("Patient", "after")).isPresent();
    }

    @Test
    void what_is_told_to_be_written_can_be_read_at_once() throws Exception {
        var found = new ArrayList<CompletableFuture<Boolean>>();
        for (int i = 0; i < 100; i++) {
            String id = "p" + i;
            found.add(
                    ledger.write(t -> put(t, id))
                            .thenApply(
                                    r -> read(t -> t.resources().get("Patient", id).isPresent())));
        }
        for (var future : found) {
            assertThat(future.get(30, TimeUnit.SECONDS)).isTrue();
        }
    }

    @Test
    void a_continuation_may_write_again_and_wait() throws Exception {
        var chain =
                ledger.write(t -> put(t, "a"))
                        .thenApply(r -> ledger.write(t -> put(t, "b")).join())
                        .thenApply(r -> ledger.write(t -> put(t, "c")).join());
        assertThat(chain.get(30, TimeUnit.SECONDS).id()).isEqualTo("c");
    }

    @Test
    void a_query_cannot_write() {
        assertThatThrownBy(() -> read(t -> put(t, "a"))).isInstanceOf(LedgerException.class);
    }

    @Test
    void closing_commits_what_waits_and_refuses_what_comes_later() throws Exception {
        var waiting = new ArrayList<CompletableFuture<StoredResource>>();
        for (int i = 0; i < 500; i++) {
            String id = "p" + i;
            waiting.add(ledger.write(t -> put(t, id)));
        }
        ledger.close();
        for (var future : waiting) {
            assertThat(future).isCompleted();
        }
        assertThat(ledger.write(t -> put(t, "late"))).isCompletedExceptionally();
        ledger = null;
    }

    @Test
    void a_full_queue_refuses_at_once_and_the_ledger_goes_on() throws Exception {
        var reached = new CompletableFuture<Void>();
        var gate = new CompletableFuture<Void>();
        ledger.write(
                t -> {
                    reached.complete(null);
                    return gate.join();
                });
        // Only a writer that holds its group cannot take from the queue between two offers.
        reached.get(30, TimeUnit.SECONDS);
        try {
            for (int i = 0; i < JdbcLedger.QUEUE; i++) {
                String id = "p" + i;
                assertThat(ledger.write(t -> put(t, id))).isNotDone();
            }
            assertThat(ledger.write(t -> put(t, "refused")))
                    .failsWithin(Duration.ZERO)
                    .withThrowableOfType(ExecutionException.class)
                    .withCauseInstanceOf(LedgerBusyException.class);
        } finally {
            gate.complete(null);
        }
        write(t -> t.resources().put("Patient", "later", "{}", List.of(), NOON));
    }

    <T> T write(Function<Tables, T> work) throws Exception {
        for (int attempt = 0; ; attempt++) {
            try {
                return ledger.write(work).get(30, TimeUnit.SECONDS);
            } catch (ExecutionException e) {
                if (attempt == 100 || !(e.getCause() instanceof LedgerBusyException)) {
                    throw e;
                }
                Thread.sleep(50);
            }
        }
    }

    <T> T read(Function<Tables, T> query) {
        return ledger.read(query);
    }

    private <T> OptionalAssert<T> optional(Function<Tables, Optional<T>> query) {
        Optional<T> found = ledger.read(query);
        return assertThat(found);
    }

    private <T> ListAssert<T> listed(Function<Tables, List<T>> query) {
        List<T> found = ledger.read(query);
        return assertThat(found);
    }

    private <T> ObjectAssert<T> value(Function<Tables, T> query) {
        return assertThatObject(ledger.read(query));
    }

    private interface Change {
        void on(Tables tables);
    }

    private void run(Change change) throws Exception {
        write(
                t -> {
                    change.on(t);
                    return null;
                });
    }

    private static NewMessage message(String controlId, byte[] raw) {
        return new NewMessage("mllp", "EHR|CLINIC", controlId, "ORM^O01", "ab", raw, NOON);
    }

    private static Void answered(Tables tables, long id, String outcome) {
        tables.messages().answered(id, outcome.getBytes(), outcome);
        return null;
    }

    private static StoredResource put(Tables tables, String id) {
        return tables.resources().put("Patient", id, "{}", List.of(), NOON);
    }

    private void put(String id, int second, String status, String patient) throws Exception {
        var index =
                List.of(
                        new IndexEntry("status", null, status),
                        new IndexEntry("subject", "Patient", patient));
        Instant at = NOON.plusSeconds(second);
        write(t -> t.resources().put("Observation", id, "{}", index, at));
    }

    private List<String> find(String param, String system, String value) {
        return read(t -> t.resources().find("Patient", param, system, value));
    }

    private List<String> search(List<Criterion> criteria, int offset, int count) {
        return read(t -> t.resources().search("Observation", criteria, offset, count)).stream()
                .map(StoredResource::id)
                .toList();
    }

    private static OrderRow order(String id, String system, String placer) {
        var reason = Problem.error(Problem.Kind.REQUIRED, "IN1-36", "Policy number is missing.");
        return new OrderRow(
                id,
                "clinic",
                system,
                placer,
                "F-" + id,
                "A-" + id,
                "patient",
                OrderState.ON_HOLD,
                List.of(reason),
                null,
                NOON);
    }

    private long add(String destination, String order) throws Exception {
        var delivery =
                new NewDelivery(destination, order, "status", "a/b", new byte[1], null, NOON);
        return write(t -> t.deliveries().add(delivery));
    }

    private List<Long> due(Instant now) {
        return read(t -> t.deliveries().due(now, 100)).stream().map(DeliveryRow::id).toList();
    }

    private List<Long> claim(String destination, Instant now, Instant until) throws Exception {
        return write(t -> t.deliveries().claim(destination, now, until, 9)).stream()
                .map(DeliveryRow::id)
                .toList();
    }
}
