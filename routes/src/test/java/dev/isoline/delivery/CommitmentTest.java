package dev.isoline.delivery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import dev.isoline.dicom.spi.AeTitle;
import dev.isoline.dicom.spi.CommitmentRequest;
import dev.isoline.dicom.spi.CommitmentResult;
import dev.isoline.dicom.spi.CommitmentResult.Failure;
import dev.isoline.dicom.spi.CommitmentResults;
import dev.isoline.dicom.spi.Peer;
import dev.isoline.dicom.spi.SopReference;
import dev.isoline.dicom.spi.Status;
import dev.isoline.ledger.DeliveryTable.DeliveryRow;
import dev.isoline.ledger.DeliveryTable.NewDelivery;
import dev.isoline.ledger.DeliveryTable.State;
import dev.isoline.ledger.Ledger;
import dev.isoline.ledger.LedgerFactory;
import dev.isoline.ledger.TimelineTable.Entry;
import dev.isoline.settings.IsolineProperties;
import java.io.IOException;
import java.net.InetAddress;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Function;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.boot.context.properties.bind.Binder;
import org.springframework.boot.context.properties.source.MapConfigurationPropertySource;
import org.springframework.boot.ssl.DefaultSslBundleRegistry;

/**
 * Storage commitment as its user, PS3.4 J.3, over a real ledger. The archive is a small one of our
 * own; archives of other makes are in the peer tests.
 */
class CommitmentTest {

    private static final String ORDER = "o1";
    private static final Status LOST = Status.NO_SUCH_INSTANCE;
    private static final int ATTEMPTS = 3;

    @TempDir Path data;
    private final SettableClock clock = new SettableClock();
    private final Archive archive = new Archive();
    private Ledger ledger;
    private Commitments commitments;
    private DeliveryWorker worker;

    @BeforeEach
    void start() throws Exception {
        ledger = LedgerFactory.open("", "", "", data);
        var properties = properties();
        commitments = new Commitments(ledger, properties, clock);
        var destinations =
                Destinations.of(
                        properties, new DefaultSslBundleRegistry(), to -> archive, commitments);
        worker = new DeliveryWorker(ledger, destinations, properties.delivery(), clock);
        worker.start();
    }

    @AfterEach
    void stop() {
        worker.close();
        ledger.close();
    }

    @Test
    void an_object_is_delivered_when_it_is_committed_and_not_before() throws Exception {
        var objects = add("2.999.1", "2.999.2");
        var request = archive.request(1);
        assertThat(uids(request)).containsExactly("2.999.1", "2.999.2");
        assertThat(states(objects)).containsOnly(State.STORED);
        assertThat(report("ARCHIVE", committed(request)).isSuccess()).isTrue();
        assertThat(states(objects)).containsOnly(State.DELIVERED);
        assertThat(events()).containsExactly("stored", "stored", "delivered", "delivered");
        await().until(() -> pending() == 0);
    }

    /** PS3.4 J.3.2.1.2: the transaction UID is the user's to remember. */
    @Test
    void a_transaction_is_in_the_ledger_before_it_is_asked_for() throws Exception {
        var known = new ArrayList<Boolean>();
        archive.asked =
                request ->
                        known.add(
                                ledger.read(
                                                t ->
                                                        t.commitments()
                                                                .byTransaction(
                                                                        request.transaction()))
                                        .isPresent());
        add("2.999.1");
        archive.request(1);
        assertThat(known).containsExactly(true);
    }

    /** PS3.4 J.3.3: on an association of its own, hours later. */
    @Test
    void a_report_that_comes_hours_and_a_restart_later_is_taken() throws Exception {
        long id = add("2.999.1").get(0);
        var request = archive.request(1);
        await().until(() -> pending("archive/commitment").attempts() == 1);
        stop();
        clock.move(Duration.ofHours(5));
        start();
        assertThat(report("ARCHIVE", committed(request)).isSuccess()).isTrue();
        assertThat(states(List.of(id))).containsExactly(State.DELIVERED);
        clock.move(Duration.ofDays(2));
        worker.wake();
        await().until(() -> pending() == 0);
        assertThat(archive.requests).hasSize(1);
    }

    @Test
    void an_archive_that_does_not_report_in_time_is_asked_again_under_another_transaction()
            throws Exception {
        long id = add("2.999.1").get(0);
        var first = archive.request(1);
        await().until(() -> pending("archive/commitment").attempts() == 1);
        clock.move(Duration.ofHours(24));
        var second = archive.request(2);
        assertThat(second.transaction()).isNotEqualTo(first.transaction());
        assertThat(report("ARCHIVE", committed(first)).isSuccess()).isTrue();
        assertThat(states(List.of(id))).containsExactly(State.DELIVERED);
    }

    @Test
    void a_lost_object_is_stored_again_a_refused_one_is_parked_and_the_rest_is_delivered()
            throws Exception {
        var objects = add("2.999.1", "2.999.2", "2.999.3");
        var request = archive.request(1);
        report(
                "ARCHIVE",
                new CommitmentResult(
                        request.transaction(),
                        List.of(request.references().get(0)),
                        List.of(
                                new Failure(request.references().get(1), LOST),
                                new Failure(
                                        request.references().get(2),
                                        Status.SOP_CLASS_NOT_SUPPORTED))));
        assertThat(states(objects)).containsExactly(State.DELIVERED, State.PENDING, State.PARKED);
        clock.move(Duration.ofSeconds(1));
        var second = archive.request(2);
        assertThat(uids(second)).containsExactly("2.999.2");
        assertThat(archive.stored("2.999.2")).isEqualTo(2);
        report("ARCHIVE", committed(second));
        assertThat(states(objects)).containsExactly(State.DELIVERED, State.DELIVERED, State.PARKED);
    }

    @Test
    void an_archive_that_loses_an_object_again_and_again_is_left_to_a_person() throws Exception {
        archive.atOnce = request -> Optional.of(failed(request, LOST));
        long id = add("2.999.1").get(0);
        for (int attempt = 1; attempt < ATTEMPTS; attempt++) {
            archive.request(attempt);
            int tried = attempt;
            await().until(() -> row(id).attempts() == tried && row(id).state() == State.PENDING);
            clock.move(Duration.ofMinutes(1));
        }
        await().until(() -> row(id).state() == State.PARKED);
        assertThat(row(id).lastError()).contains("0112");
        assertThat(archive.stored("2.999.1")).isEqualTo(ATTEMPTS);
    }

    /** PS3.4 J.3.3.1.2 wants all of them in one report; an archive may not know. */
    @Test
    void what_a_report_leaves_out_is_asked_for_again_soon() throws Exception {
        archive.atOnce =
                request ->
                        Optional.of(
                                new CommitmentResult(
                                        request.transaction(),
                                        request.references().subList(0, 1),
                                        List.of()));
        var objects = add("2.999.1", "2.999.2");
        archive.request(1);
        await().until(() -> row(objects.get(0)).state() == State.DELIVERED);
        await().until(() -> pending("archive/commitment").attempts() == 1);
        clock.move(Duration.ofSeconds(2));
        assertThat(uids(archive.request(2))).containsExactly("2.999.2");
        await().until(() -> row(objects.get(1)).state() == State.DELIVERED);
    }

    @Test
    void a_report_of_another_archive_or_on_an_unknown_transaction_changes_nothing()
            throws Exception {
        long id = add("2.999.1").get(0);
        var request = archive.request(1);
        assertThat(report("OTHER", committed(request)).code()).isEqualTo(0x0110);
        var unknown = new CommitmentResult("2.999.77", request.references(), List.of());
        assertThat(report("ARCHIVE", unknown).code()).isEqualTo(0x0110);
        assertThat(states(List.of(id))).containsExactly(State.STORED);
    }

    @Test
    void a_late_failure_takes_nothing_back_that_was_committed() throws Exception {
        long id = add("2.999.1").get(0);
        var first = archive.request(1);
        await().until(() -> pending("archive/commitment").attempts() == 1);
        clock.move(Duration.ofHours(24));
        var second = archive.request(2);
        report("ARCHIVE", committed(second));
        report("ARCHIVE", failed(first, Status.SOP_CLASS_NOT_SUPPORTED));
        report("ARCHIVE", failed(second, Status.SOP_CLASS_NOT_SUPPORTED));
        assertThat(states(List.of(id))).containsExactly(State.DELIVERED);
        assertThat(events()).doesNotContain("parked");
    }

    /** Takes every object and every request; what it reports at once is the test's to say. */
    private static final class Archive implements ArchiveLine {

        private final List<String> files = new CopyOnWriteArrayList<>();
        private final List<CommitmentRequest> requests = new CopyOnWriteArrayList<>();
        private volatile Function<CommitmentRequest, Object> asked = request -> "";
        private volatile Function<CommitmentRequest, Optional<CommitmentResult>> atOnce =
                request -> Optional.empty();

        @Override
        public Status store(Path file, String sopClass) {
            files.add(file.getFileName().toString());
            return Status.SUCCESS;
        }

        @Override
        public Status requestCommitment(CommitmentRequest request, CommitmentResults results)
                throws IOException {
            asked.apply(request);
            requests.add(request);
            var result = atOnce.apply(request);
            if (result.isPresent()) {
                results.result(peer("ARCHIVE"), result.get());
            }
            return Status.SUCCESS;
        }

        long stored(String uid) {
            return files.stream().filter(file -> file.startsWith(uid + ".")).count();
        }

        CommitmentRequest request(int number) {
            await().until(() -> requests.size() >= number);
            return requests.get(number - 1);
        }
    }

    private IsolineProperties properties() {
        var settings = new HashMap<String, String>();
        settings.put("isoline.data", data.toString());
        settings.put("isoline.delivery.first-retry", "1s");
        settings.put("isoline.delivery.longest-retry", "1m");
        settings.put("isoline.delivery.attempts", Integer.toString(ATTEMPTS));
        settings.put("isoline.dicom.port", "11112");
        settings.put("isoline.dicom.peers.pacs.ae-title", "ARCHIVE");
        settings.put("isoline.dicom.peers.pacs.host", "127.0.0.1");
        settings.put("isoline.dicom.peers.pacs.may", "COMMIT");
        settings.put("isoline.destinations.archive.kind", "archive");
        settings.put("isoline.destinations.archive.peer", "pacs");
        settings.put("isoline.destinations.archive.commitment.required", "true");
        return new Binder(new MapConfigurationPropertySource(settings))
                .bindOrCreate("isoline", IsolineProperties.class);
    }

    /** Objects that are due to the archive, all at once. */
    private List<Long> add(String... uids) throws IOException {
        for (String uid : uids) {
            Objects.write(data.resolve(uid + ".dcm"), uid, 8);
        }
        return ledger.write(
                        t ->
                                Arrays.stream(uids)
                                        .map(uid -> t.deliveries().add(delivery(uid)))
                                        .toList())
                .join();
    }

    private NewDelivery delivery(String uid) {
        String path = uid + ".dcm";
        return new NewDelivery(
                "archive", ORDER, "object", "application/dicom", null, path, clock.instant());
    }

    private Status report(String title, CommitmentResult result) {
        return commitments.report(peer(title), result);
    }

    private static Peer peer(String title) {
        return new Peer(
                new AeTitle(title),
                new AeTitle("ISOLINE"),
                InetAddress.getLoopbackAddress(),
                "",
                "",
                Optional.empty());
    }

    private static CommitmentResult committed(CommitmentRequest request) {
        return new CommitmentResult(request.transaction(), request.references(), List.of());
    }

    private static CommitmentResult failed(CommitmentRequest request, Status reason) {
        return new CommitmentResult(
                request.transaction(),
                List.of(),
                request.references().stream().map(r -> new Failure(r, reason)).toList());
    }

    private static List<String> uids(CommitmentRequest request) {
        return request.references().stream().map(SopReference::sopInstance).toList();
    }

    private DeliveryRow row(long id) {
        return ledger.read(t -> t.deliveries().byId(id)).orElseThrow();
    }

    private List<State> states(List<Long> ids) {
        return ids.stream().map(id -> row(id).state()).toList();
    }

    private DeliveryRow pending(String lane) {
        return ledger.read(t -> t.deliveries().ofLane(lane, ORDER)).get(0);
    }

    private long pending() {
        return ledger.read(t -> t.deliveries().byState(State.PENDING, 10)).size();
    }

    private List<String> events() {
        return ledger.read(t -> t.timeline().of(ORDER)).stream().map(Entry::event).toList();
    }
}
