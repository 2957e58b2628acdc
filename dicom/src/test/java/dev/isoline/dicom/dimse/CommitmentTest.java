package dev.isoline.dicom.dimse;

import static dev.isoline.dicom.dimse.Loopback.AMBULATORY_ECG;
import static dev.isoline.dicom.dimse.Loopback.ENGINE;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.dicom.spi.CommitmentProvider;
import dev.isoline.dicom.spi.CommitmentRequest;
import dev.isoline.dicom.spi.CommitmentResult;
import dev.isoline.dicom.spi.CommitmentResult.Failure;
import dev.isoline.dicom.spi.ContextNotAccepted;
import dev.isoline.dicom.spi.Offer;
import dev.isoline.dicom.spi.Peer;
import dev.isoline.dicom.spi.Refused;
import dev.isoline.dicom.spi.Role;
import dev.isoline.dicom.spi.Services;
import dev.isoline.dicom.spi.SopClass;
import dev.isoline.dicom.spi.SopReference;
import dev.isoline.dicom.spi.Status;
import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Storage Commitment Push Model, PS3.4 J.3, both sides over real sockets. */
@Timeout(30)
class CommitmentTest {

    private static final SopReference FIRST = new SopReference(AMBULATORY_ECG, "1.2.3.1");
    private static final SopReference SECOND = new SopReference(AMBULATORY_ECG, "1.2.3.2");

    private static final CommitmentRequest REQUEST =
            new CommitmentRequest("1.2.3.9", List.of(FIRST, SECOND));

    private static final CommitmentResult RESULT =
            new CommitmentResult(
                    "1.2.3.9",
                    List.of(FIRST),
                    List.of(new Failure(SECOND, Status.NO_SUCH_INSTANCE)));

    /** An archive that reports on the association it was asked on. */
    private static class Archive implements CommitmentProvider {

        private final BlockingQueue<CommitmentRequest> requests = new LinkedBlockingQueue<>();
        private final BlockingQueue<Status> answers = new LinkedBlockingQueue<>();

        @Override
        public Status request(Peer peer, CommitmentRequest request) {
            requests.add(request);
            return Status.SUCCESS;
        }

        @Override
        public Optional<CommitmentResult> result(Peer peer, CommitmentRequest request) {
            return Optional.of(RESULT);
        }

        @Override
        public void reported(CommitmentResult result, Status answer) {
            answers.add(answer);
        }
    }

    @Test
    void a_result_may_come_on_the_association_of_the_request() throws Exception {
        var archive = new Archive();
        var results = new LinkedBlockingQueue<CommitmentResult>();
        try (var listener =
                        ENGINE.listen(Loopback.local(), Services.echoing().committing(archive));
                var association =
                        ENGINE.associate(
                                Loopback.remote(listener),
                                Offer.commitment(),
                                (peer, result) -> {
                                    results.add(result);
                                    return Status.SUCCESS;
                                })) {
            assertThat(association.requestCommitment(REQUEST)).isEqualTo(Status.SUCCESS);
            assertThat(association.awaitCommitment(Duration.ofSeconds(5))).isTrue();
            assertThat(association.awaitCommitment(Duration.ofMillis(50))).isFalse();
        }
        assertThat(results).containsExactly(RESULT);
        assertThat(archive.requests).containsExactly(REQUEST);
        assertThat(archive.answers.poll(5, TimeUnit.SECONDS)).isEqualTo(Status.SUCCESS);
    }

    /** An engine that reads on a thread of its own may have answered before the end. */
    @Test
    @Tag("built-in")
    void a_result_is_told_as_not_answered_where_the_requestor_releases_instead() throws Exception {
        var archive = new Archive();
        try (var listener =
                        ENGINE.listen(Loopback.local(), Services.echoing().committing(archive));
                var association = ENGINE.associate(Loopback.remote(listener), Offer.commitment())) {
            assertThat(association.requestCommitment(REQUEST)).isEqualTo(Status.SUCCESS);
        }
        assertThat(archive.answers.poll(5, TimeUnit.SECONDS).code()).isEqualTo(0x0110);
    }

    @Test
    void a_result_is_told_as_not_answered_where_the_requestor_has_aborted() throws Exception {
        var aborted = new CountDownLatch(1);
        Archive archive =
                new Archive() {
                    @Override
                    public Optional<CommitmentResult> result(Peer peer, CommitmentRequest request) {
                        await(aborted);
                        return super.result(peer, request);
                    }
                };
        try (var listener =
                ENGINE.listen(Loopback.local(), Services.echoing().committing(archive))) {
            var association = ENGINE.associate(Loopback.remote(listener), Offer.commitment());
            assertThat(association.requestCommitment(REQUEST)).isEqualTo(Status.SUCCESS);
            association.abort();
            aborted.countDown();
            assertThat(archive.answers.poll(5, TimeUnit.SECONDS).code()).isEqualTo(0x0110);
            assertThat(archive.answers.poll(200, TimeUnit.MILLISECONDS)).as("once").isNull();
        }
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** The archive is requestor then, and proposes the SCP role. */
    @Test
    void a_result_may_come_on_a_new_association() throws Exception {
        var results = new LinkedBlockingQueue<CommitmentResult>();
        var services =
                Services.echoing()
                        .takingResults(
                                (peer, result) -> {
                                    results.add(result);
                                    return Status.SUCCESS;
                                });
        try (var listener = ENGINE.listen(Loopback.local(), services);
                var association =
                        ENGINE.associate(Loopback.remote(listener), Offer.commitmentResults())) {
            assertThat(association.accepted()).allMatch(c -> c.role() == Role.SCP);
            assertThat(association.reportCommitment(RESULT)).isEqualTo(Status.SUCCESS);
            assertThatThrownBy(() -> association.requestCommitment(REQUEST))
                    .isInstanceOf(ContextNotAccepted.class);
        }
        assertThat(results.poll()).isEqualTo(RESULT);
    }

    @Test
    void an_archive_that_takes_no_results_gives_no_scp_role() throws IOException {
        try (var listener =
                        ENGINE.listen(
                                Loopback.local(), Services.echoing().committing(new Archive()));
                var association =
                        ENGINE.associate(Loopback.remote(listener), Offer.commitmentResults())) {
            assertThat(association.accepts(SopClass.STORAGE_COMMITMENT)).isFalse();
        }
    }

    /** PS3.4 J.3.2.1.4: anything but 0000 ends the transaction. */
    @Test
    void a_refused_request_is_no_transaction() throws IOException {
        CommitmentProvider refusing =
                (peer, request) -> {
                    throw new Refused(Status.DUPLICATE_TRANSACTION.because("used before"));
                };
        try (var listener =
                        ENGINE.listen(Loopback.local(), Services.echoing().committing(refusing));
                var association = ENGINE.associate(Loopback.remote(listener), Offer.commitment())) {
            assertThat(association.requestCommitment(REQUEST))
                    .hasToString("0131H duplicate transaction UID: used before");
            assertThat(association.awaitCommitment(Duration.ofMillis(50))).isFalse();
        }
    }

    @Test
    void a_request_without_an_instance_is_refused_by_its_name() throws IOException {
        try (var listener =
                        ENGINE.listen(
                                Loopback.local(), Services.echoing().committing(new Archive()));
                var association = ENGINE.associate(Loopback.remote(listener), Offer.commitment())) {
            Status status =
                    association.requestCommitment(new CommitmentRequest("1.2.3.9", List.of()));
            assertThat(status.code()).isEqualTo(0x0115);
            assertThat(status.comment()).startsWith("(0008,1199)");
        }
    }
}
