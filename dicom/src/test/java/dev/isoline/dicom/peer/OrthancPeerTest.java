package dev.isoline.dicom.peer;

import static dev.isoline.dicom.dimse.Loopback.AMBULATORY_ECG;
import static dev.isoline.dicom.dimse.Loopback.ENGINE;
import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.Uid;
import dev.isoline.dicom.dimse.Loopback;
import dev.isoline.dicom.spi.CommitmentRequest;
import dev.isoline.dicom.spi.CommitmentResult;
import dev.isoline.dicom.spi.Listener;
import dev.isoline.dicom.spi.Offer;
import dev.isoline.dicom.spi.Services;
import dev.isoline.dicom.spi.SopReference;
import dev.isoline.dicom.spi.Status;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Against Orthanc: what it keeps is what was sent, and it commits to it. */
@Tag("peer")
@Timeout(120)
class OrthancPeerTest {

    @TempDir static Path folder;

    private static final BlockingQueue<CommitmentResult> RESULTS = new LinkedBlockingQueue<>();

    private static Listener listener;
    private static Orthanc orthanc;

    @BeforeAll
    static void start() throws IOException {
        listener =
                ENGINE.listen(
                        Loopback.local(),
                        Services.echoing()
                                .takingResults(
                                        (peer, result) -> {
                                            RESULTS.add(result);
                                            return Status.SUCCESS;
                                        }));
        orthanc = Orthanc.start(folder, Loopback.ARCHIVE, listener.address().getPort());
    }

    @AfterAll
    static void stop() {
        if (orthanc != null) {
            orthanc.close();
        }
        listener.close();
    }

    @Test
    void what_it_keeps_is_what_was_sent_and_it_commits_to_it() throws IOException {
        DataSet sent = Loopback.object(folder, 3_000_000);
        Path file = folder.resolve("sent.dcm");
        try (var channel =
                FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            Part10.write(channel, TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN, sent);
        }
        var offer = Offer.storage(List.of(AMBULATORY_ECG));
        try (var association = ENGINE.associate(orthanc.remote(Loopback.ARCHIVE), offer)) {
            assertThat(association.store(file)).isEqualTo(Status.SUCCESS);
        }
        assertThat(orthanc.instances()).hasSize(1);
        byte[] kept = orthanc.file(orthanc.instances().get(0));
        assertThat(read(Files.write(folder.resolve("kept.dcm"), kept))).isEqualTo(read(file));
        theCommitmentIsReported(sent);
    }

    private static DataSet read(Path file) throws IOException {
        try (var channel = FileChannel.open(file)) {
            return Part10.read(channel, new ReadLimits(32, 1000, 1 << 23, 1 << 24)).dataSet();
        }
    }

    /** PS3.4 J.3.3: event 1 where all is committed, event 2 with 0112H for what is not there. */
    private void theCommitmentIsReported(DataSet sent) throws IOException {
        String instance = sent.text(dev.isoline.dicom.Tag.SOPInstanceUID).orElseThrow();
        var there = new SopReference(AMBULATORY_ECG, instance);
        var missing = new SopReference(AMBULATORY_ECG, Uid.of("missing"));
        var all = committed(new CommitmentRequest(Uid.of("first"), List.of(there)));
        assertThat(all).isEqualTo(new CommitmentResult(Uid.of("first"), List.of(there), List.of()));
        var some = committed(new CommitmentRequest(Uid.of("second"), List.of(there, missing)));
        assertThat(some)
                .isEqualTo(
                        new CommitmentResult(
                                Uid.of("second"),
                                List.of(there),
                                List.of(
                                        new CommitmentResult.Failure(
                                                missing, Status.NO_SUCH_INSTANCE))));
    }

    private static CommitmentResult committed(CommitmentRequest request) throws IOException {
        try (var association =
                ENGINE.associate(orthanc.remote(Loopback.ARCHIVE), Offer.commitment())) {
            assertThat(association.requestCommitment(request)).isEqualTo(Status.SUCCESS);
        }
        try {
            CommitmentResult result = RESULTS.poll(30, TimeUnit.SECONDS);
            assertThat(result).as(orthanc.log()).isNotNull();
            return result;
        } catch (InterruptedException e) {
            throw new IOException(e);
        }
    }

    @Test
    void an_echo_is_answered() throws IOException {
        try (var association =
                ENGINE.associate(orthanc.remote(Loopback.ARCHIVE), Offer.verification())) {
            assertThat(association.echo()).isEqualTo(Status.SUCCESS);
        }
    }
}
