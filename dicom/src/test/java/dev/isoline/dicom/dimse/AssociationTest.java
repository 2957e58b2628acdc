package dev.isoline.dicom.dimse;

import static dev.isoline.dicom.dimse.Loopback.AMBULATORY_ECG;
import static dev.isoline.dicom.dimse.Loopback.ENGINE;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.spi.Admission;
import dev.isoline.dicom.spi.AeTitle;
import dev.isoline.dicom.spi.Association;
import dev.isoline.dicom.spi.ContextNotAccepted;
import dev.isoline.dicom.spi.MaxPdu;
import dev.isoline.dicom.spi.Offer;
import dev.isoline.dicom.spi.OfferedContext;
import dev.isoline.dicom.spi.Refused;
import dev.isoline.dicom.spi.Rejection;
import dev.isoline.dicom.spi.Remote;
import dev.isoline.dicom.spi.Role;
import dev.isoline.dicom.spi.Services;
import dev.isoline.dicom.spi.SopClass;
import dev.isoline.dicom.spi.Status;
import dev.isoline.dicom.spi.StorageProvider;
import dev.isoline.dicom.spi.StoreRequest;
import java.io.IOException;
import java.net.SocketTimeoutException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What any engine has to do, over real sockets against itself: the built-in one here, dcm4che where
 * it is on the class path. Other peers are in the peer tests.
 */
@Timeout(60)
class AssociationTest {

    private static final Offer STORAGE = Offer.storage(List.of(AMBULATORY_ECG));

    @TempDir Path folder;

    @Test
    void an_echo_is_answered_and_the_peer_presents_itself() throws IOException {
        try (var listener = ENGINE.listen(Loopback.local(), Services.echoing());
                var association =
                        ENGINE.associate(Loopback.remote(listener), Offer.verification())) {
            assertThat(association.echo()).isEqualTo(Status.SUCCESS);
            assertThat(association.echo()).isEqualTo(Status.SUCCESS);
            assertThat(association.peer().implementationClass())
                    .isEqualTo(Part10.IMPLEMENTATION_CLASS);
            assertThat(association.accepted()).hasSize(2);
            association.release();
            assertThatThrownBy(association::echo).isInstanceOf(IOException.class);
        }
    }

    /** PS3.8 D.1: the limit is that of the receiver; 128 is the least there may be. */
    @ParameterizedTest
    @CsvSource({"128, 0", "4096, 0", "16384, 0", "0, 0", "262144, 4096", "0, 130"})
    void objects_pass_at_any_maximum_pdu_length(int receive, int send) throws Exception {
        var kept = new Loopback.Folder(folder.resolve("kept"));
        DataSet object = Loopback.object(folder, 300_001 + receive % 2);
        var local = Loopback.local().with(new MaxPdu(receive, 0));
        try (var listener = Loopback.storing(local, kept)) {
            Remote remote = Loopback.remote(listener).with(new MaxPdu(0, send));
            try (var association = ENGINE.associate(remote, STORAGE)) {
                assertThat(association.store(object)).isEqualTo(Status.SUCCESS);
            }
        }
        try (var file = FileChannel.open(kept.of(object.text(Tag.SOPInstanceUID).orElseThrow()))) {
            var read = Part10.read(file, ReadLimits.DEFAULT);
            assertThat(read.meta().text(Tag.SourceApplicationEntityTitle)).contains("REC1");
            assertThat(read.dataSet().element(Tag.WaveformData).orElseThrow().length())
                    .isEqualTo(300_002);
        }
    }

    @Test
    void a_file_is_sent_as_it_is_where_its_syntax_is_accepted() throws Exception {
        var kept = new Loopback.Folder(folder.resolve("kept"));
        Path file =
                write("a.dcm", TransferSyntax.IMPLICIT_VR_LITTLE_ENDIAN, Loopback.head("1.2.3"));
        // a group length, which re-encoding would drop
        byte[] bytes = Files.readAllBytes(file);
        try (var listener = Loopback.storing(Loopback.local(), kept);
                var association = ENGINE.associate(Loopback.remote(listener), STORAGE)) {
            assertThat(association.store(file)).isEqualTo(Status.SUCCESS);
        }
        byte[] arrived = Files.readAllBytes(kept.of("1.2.3"));
        int dataSet = bytes.length - Loopback.encodedLength(bytes);
        assertThat(
                        java.util.Arrays.copyOfRange(
                                arrived, arrived.length - (bytes.length - dataSet), arrived.length))
                .isEqualTo(java.util.Arrays.copyOfRange(bytes, dataSet, bytes.length));
    }

    @Test
    void a_file_is_encoded_anew_where_its_syntax_is_not_accepted() throws Exception {
        var kept = new Loopback.Folder(folder.resolve("kept"));
        DataSet head = Loopback.head("1.2.3");
        Path file = write("a.dcm", TransferSyntax.IMPLICIT_VR_LITTLE_ENDIAN, head);
        var explicitOnly =
                new Offer(
                        List.of(
                                new OfferedContext(
                                        AMBULATORY_ECG,
                                        List.of(TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN),
                                        Role.SCU)));
        try (var listener = Loopback.storing(Loopback.local(), kept);
                var association = ENGINE.associate(Loopback.remote(listener), explicitOnly)) {
            assertThat(association.store(file)).isEqualTo(Status.SUCCESS);
        }
        try (var channel = FileChannel.open(kept.of("1.2.3"))) {
            var read = Part10.read(channel, ReadLimits.DEFAULT);
            assertThat(read.meta().text(Tag.TransferSyntaxUID)).contains("1.2.840.10008.1.2.1");
            assertThat(read.dataSet().text(Tag.PatientID)).contains("4711");
            assertThat(read.dataSet().toString()).isEqualTo(head.toString());
        }
    }

    private Path write(String name, TransferSyntax syntax, DataSet dataSet) throws IOException {
        Path file = folder.resolve(name);
        try (var channel =
                FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            Part10.write(channel, syntax, dataSet);
        }
        return file;
    }

    @Test
    void a_sop_class_that_is_not_served_is_named_with_the_reason() throws IOException {
        try (var listener = ENGINE.listen(Loopback.local(), Services.echoing());
                var association =
                        ENGINE.associate(
                                Loopback.remote(listener), STORAGE.and(Offer.verification()))) {
            assertThatThrownBy(() -> association.store(Loopback.head("1.2.3")))
                    .isInstanceOf(ContextNotAccepted.class)
                    .hasMessage(
                            "no presentation context for SOP class 1.2.840.10008.5.1.4.1.1.9.1.3:"
                                    + " abstract syntax not supported by the peer");
            assertThatThrownBy(
                            () -> association.find("1.2.3", new DataSet(), (match, status) -> true))
                    .hasMessageEndingWith("it was not offered");
            assertThat(association.echo()).isEqualTo(Status.SUCCESS);
        }
    }

    /** PS3.8 table 9-21. */
    @Test
    void an_unknown_ae_title_is_rejected_on_either_side() throws IOException {
        var local = Loopback.local().with(new Admission(Set.of(new AeTitle("SOMEBODY")), false, 5));
        try (var listener = ENGINE.listen(local, Services.echoing())) {
            var remote = Loopback.remote(listener);
            assertRejected(remote, 1, 1, 3);
            var wrong =
                    Remote.of(
                            "127.0.0.1",
                            listener.address().getPort(),
                            new AeTitle("OTHER"),
                            new AeTitle("SOMEBODY"));
            assertRejected(wrong, 1, 1, 7);
        }
    }

    @Test
    void a_listener_answers_to_its_other_titles_too() throws IOException {
        var known = new Admission(Set.of(), Set.of(new AeTitle("ALSO ME")), false, 5);
        try (var listener = ENGINE.listen(Loopback.local().with(known), Services.echoing())) {
            int port = listener.address().getPort();
            var other = new AeTitle("ALSO ME");
            var calling = new AeTitle("SOMEBODY");
            try (var association =
                    ENGINE.associate(
                            Remote.of("127.0.0.1", port, other, calling), Offer.verification())) {
                assertThat(association.echo()).isEqualTo(Status.SUCCESS);
            }
            ENGINE.associate(Loopback.remote(listener), Offer.verification()).close();
            var wrong = Remote.of("127.0.0.1", port, new AeTitle("NOT ME"), calling);
            assertRejected(wrong, 1, 1, 7);
        }
    }

    private static void assertRejected(Remote remote, int result, int source, int reason) {
        assertThatThrownBy(() -> ENGINE.associate(remote, Offer.verification()))
                .isInstanceOfSatisfying(
                        Rejection.class,
                        r ->
                                assertThat(List.of(r.result(), r.source(), r.reason()))
                                        .containsExactly(result, source, reason));
    }

    @Test
    void one_association_too_many_is_rejected_for_now_and_a_later_one_is_not() throws Exception {
        var local = Loopback.local().with(new Admission(Set.of(), true, 1));
        try (var listener = ENGINE.listen(local, Services.echoing())) {
            var remote = Loopback.remote(listener);
            try (var first = ENGINE.associate(remote, Offer.verification())) {
                assertRejected(remote, 2, 3, 2);
                assertThat(listener.associations()).isEqualTo(1);
                assertThat(first.echo()).isEqualTo(Status.SUCCESS);
            }
            eventually(() -> listener.associations() == 0);
            ENGINE.associate(remote, Offer.verification()).close();
        }
    }

    private interface Condition {
        boolean holds();
    }

    private static void eventually(Condition condition) throws InterruptedException {
        for (int i = 0; i < 500 && !condition.holds(); i++) {
            Thread.sleep(10);
        }
        assertThat(condition.holds()).isTrue();
    }

    @Test
    void what_a_provider_answers_reaches_the_sender() throws IOException {
        var kept = new Loopback.Folder(folder.resolve("kept"));
        kept.answer = Status.COERCION.because("Patient ID from the order");
        try (var listener = Loopback.storing(Loopback.local(), kept);
                var association = ENGINE.associate(Loopback.remote(listener), STORAGE)) {
            assertThat(association.store(Loopback.head("1.2.3"))).isEqualTo(kept.answer);
        }
    }

    /** PS3.7 9.1.1.2: a failure may be answered, and seen, before all of the object was sent. */
    @Test
    void a_refusal_stops_a_large_object_early_and_the_association_goes_on() throws Exception {
        var received = new AtomicInteger();
        StorageProvider refusing =
                new StorageProvider() {
                    @Override
                    public Path file(StoreRequest request) throws IOException {
                        received.incrementAndGet();
                        throw new Refused(Status.OUT_OF_RESOURCES.because("no room"));
                    }

                    @Override
                    public Status stored(StoreRequest request, Path file, DataSet head) {
                        return Status.SUCCESS;
                    }
                };
        Path file =
                write(
                        "a.dcm",
                        TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN,
                        Loopback.object(folder, 48L << 20));
        try (var listener = Loopback.storing(Loopback.local(), refusing);
                var association = ENGINE.associate(Loopback.remote(listener), STORAGE)) {
            for (int i = 0; i < 2; i++) {
                assertThat(association.store(file)).hasToString("A700H out of resources: no room");
            }
        }
        assertThat(received).hasValue(2);
    }

    @Test
    void an_unreadable_object_is_refused_and_leaves_no_file() throws Exception {
        var kept = new Loopback.Folder(folder.resolve("kept"));
        Path file =
                write("a.dcm", TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN, Loopback.head("1.2.3"));
        byte[] bytes = Files.readAllBytes(file);
        bytes = java.util.Arrays.copyOf(bytes, bytes.length - 2); // within its last value
        Files.write(file, bytes);
        try (var listener = Loopback.storing(Loopback.local(), kept);
                var association = ENGINE.associate(Loopback.remote(listener), STORAGE)) {
            Status status = association.store(file);
            assertThat(status.code()).isEqualTo(0xC000);
        }
        assertThat(kept.of("1.2.3")).doesNotExist();
        assertThat(kept.failures).hasSize(1);
        assertThat(kept.stored).isEmpty();
    }

    @Test
    void a_file_that_stands_where_an_object_should_go_is_left_alone() throws Exception {
        var kept = new Loopback.Folder(folder.resolve("kept"));
        Files.writeString(kept.of("1.2.3"), "of somebody else");
        try (var listener = Loopback.storing(Loopback.local(), kept);
                var association = ENGINE.associate(Loopback.remote(listener), STORAGE)) {
            Status status = association.store(Loopback.head("1.2.3"));
            assertThat(status.code()).isEqualTo(0xA700);
            assertThat(association.store(Loopback.head("1.2.4"))).isEqualTo(Status.SUCCESS);
        }
        assertThat(kept.of("1.2.3")).hasContent("of somebody else");
        assertThat(kept.failures).hasSize(1);
    }

    private static final int ROWS = 1000;

    private static Status rows(
            dev.isoline.dicom.spi.FindRequest request, dev.isoline.dicom.spi.Pending pending)
            throws IOException {
        String id = request.keys().text(Tag.PatientID).orElse("");
        for (int i = 0; i < ROWS; i++) {
            DataSet row = new DataSet().putText(Tag.PatientID, id + i);
            if (!pending.send(
                    row, i % 2 == 0 ? Status.PENDING : Status.PENDING_KEYS_NOT_SUPPORTED)) {
                return Status.CANCEL;
            }
        }
        return Status.SUCCESS;
    }

    private static Services worklist() {
        return Services.echoing().finding(SopClass.MODALITY_WORKLIST_FIND, AssociationTest::rows);
    }

    private static final DataSet KEYS = keys();

    private static DataSet keys() {
        try {
            return new DataSet().putText(Tag.PatientID, "ID");
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void matches_arrive_one_by_one_in_their_order() throws IOException {
        var ids = new ArrayList<String>();
        try (var listener = ENGINE.listen(Loopback.local(), worklist());
                var association = ENGINE.associate(Loopback.remote(listener), Offer.worklist())) {
            for (int round = 0; round < 2; round++) {
                ids.clear();
                Status end =
                        association.find(
                                SopClass.MODALITY_WORKLIST_FIND,
                                KEYS,
                                (match, status) ->
                                        ids.add(
                                                match.text(Tag.PatientID).orElse("")
                                                        + status.code()));
                assertThat(end).isEqualTo(Status.SUCCESS);
            }
        }
        assertThat(ids).hasSize(ROWS).startsWith("ID0" + 0xFF00, "ID1" + 0xFF01);
    }

    @Test
    void a_cancel_ends_the_query_and_not_the_association() throws IOException {
        var seen = new AtomicInteger();
        try (var listener =
                        ENGINE.listen(
                                Loopback.local(),
                                Services.echoing()
                                        .finding(
                                                SopClass.MODALITY_WORKLIST_FIND,
                                                AssociationTest::endless));
                var association =
                        ENGINE.associate(
                                Loopback.remote(listener),
                                Offer.worklist().and(Offer.verification()))) {
            Status end =
                    association.find(
                            SopClass.MODALITY_WORKLIST_FIND,
                            KEYS,
                            (match, status) -> seen.incrementAndGet() < 10);
            assertThat(end).isEqualTo(Status.CANCEL);
            assertThat(seen).hasValue(10);
            assertThat(association.echo()).isEqualTo(Status.SUCCESS);
        }
    }

    private static Status endless(
            dev.isoline.dicom.spi.FindRequest request, dev.isoline.dicom.spi.Pending pending)
            throws IOException {
        while (pending.send(KEYS, Status.PENDING)) {
            // until the requestor has had enough
        }
        return Status.CANCEL;
    }

    @Test
    void a_query_sees_that_its_requestor_is_gone() throws Exception {
        var ended = new CountDownLatch(1);
        var broken = new AtomicBoolean();
        var services =
                Services.echoing()
                        .finding(
                                SopClass.MODALITY_WORKLIST_FIND,
                                (request, pending) -> {
                                    try {
                                        while (!pending.cancelled()) {
                                            Thread.onSpinWait();
                                        }
                                    } finally {
                                        ended.countDown();
                                    }
                                    return Status.CANCEL;
                                })
                        .observedBy(
                                new dev.isoline.dicom.spi.AssociationObserver() {
                                    @Override
                                    public void broken(
                                            dev.isoline.dicom.spi.Peer peer, IOException cause) {
                                        broken.set(true);
                                    }
                                });
        try (var listener = ENGINE.listen(Loopback.local(), services)) {
            Association association = ENGINE.associate(Loopback.remote(listener), Offer.worklist());
            var asking =
                    new Thread(
                            () -> {
                                try {
                                    association.find(
                                            SopClass.MODALITY_WORKLIST_FIND, KEYS, (m, s) -> true);
                                } catch (IOException expected) {
                                    // aborted below
                                }
                            });
            asking.start();
            eventually(() -> listener.associations() == 1);
            Thread.sleep(100);
            association.abort();
            assertThat(ended.await(5, TimeUnit.SECONDS)).isTrue();
            asking.join(5000);
            assertThat(asking.isAlive()).isFalse();
            eventually(broken::get);
            eventually(() -> listener.associations() == 0);
        }
    }

    @Test
    void a_provider_that_fails_is_answered_as_failure() throws IOException {
        var services =
                Services.echoing()
                        .finding(
                                SopClass.MODALITY_WORKLIST_FIND,
                                (request, pending) -> {
                                    throw new IllegalStateException("broken on purpose");
                                });
        try (var listener = ENGINE.listen(Loopback.local(), services);
                var association = ENGINE.associate(Loopback.remote(listener), Offer.worklist())) {
            assertThat(association.find(SopClass.MODALITY_WORKLIST_FIND, KEYS, (m, s) -> true))
                    .isEqualTo(Status.UNABLE_TO_PROCESS);
        }
    }

    @Test
    void a_peer_that_does_not_answer_is_given_up() throws Exception {
        try (var silent =
                new java.net.ServerSocket(0, 5, java.net.InetAddress.getLoopbackAddress())) {
            var remote =
                    Remote.of(
                                    "127.0.0.1",
                                    silent.getLocalPort(),
                                    Loopback.ARCHIVE,
                                    Loopback.RECORDER)
                            .with(
                                    new dev.isoline.dicom.spi.Timeouts(
                                            Duration.ofSeconds(5),
                                            Duration.ofMillis(200),
                                            Duration.ofMillis(300),
                                            Duration.ofSeconds(5),
                                            Duration.ofSeconds(5),
                                            Duration.ofSeconds(5)));
            assertThatThrownBy(() -> ENGINE.associate(remote, Offer.verification()))
                    .isInstanceOf(SocketTimeoutException.class)
                    .hasMessage("no answer to A-ASSOCIATE-RQ within 300 ms");
        }
    }

    @Test
    void an_idle_association_is_aborted_and_its_place_given_back() throws Exception {
        var local =
                Loopback.local()
                        .with(
                                new dev.isoline.dicom.spi.Timeouts(
                                        Duration.ofSeconds(5),
                                        Duration.ofSeconds(1),
                                        Duration.ofSeconds(5),
                                        Duration.ofSeconds(5),
                                        Duration.ofSeconds(1),
                                        Duration.ofSeconds(5)));
        try (var listener = ENGINE.listen(local, worklist())) {
            var association =
                    ENGINE.associate(
                            Loopback.remote(listener), Offer.worklist().and(Offer.verification()));
            association.find(SopClass.MODALITY_WORKLIST_FIND, KEYS, (m, s) -> true);
            eventually(() -> listener.associations() == 0);
            assertThatThrownBy(association::echo)
                    .hasMessageStartingWith("association aborted by the peer's service user");
        }
    }

    @Test
    void closing_the_listener_aborts_what_is_open() throws Exception {
        var listener = ENGINE.listen(Loopback.local(), Services.echoing());
        var association = ENGINE.associate(Loopback.remote(listener), Offer.verification());
        long start = System.nanoTime();
        listener.close();
        assertThat(System.nanoTime() - start).isLessThan(TimeUnit.SECONDS.toNanos(4));
        assertThatThrownBy(association::echo).isInstanceOf(IOException.class);
        association.close();
    }
}
