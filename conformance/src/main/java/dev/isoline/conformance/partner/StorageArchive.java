package dev.isoline.conformance.partner;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.spi.Admission;
import dev.isoline.dicom.spi.AeTitle;
import dev.isoline.dicom.spi.CommitmentProvider;
import dev.isoline.dicom.spi.CommitmentRequest;
import dev.isoline.dicom.spi.CommitmentResult;
import dev.isoline.dicom.spi.CommitmentResult.Failure;
import dev.isoline.dicom.spi.DicomEngine;
import dev.isoline.dicom.spi.Listener;
import dev.isoline.dicom.spi.Local;
import dev.isoline.dicom.spi.Offer;
import dev.isoline.dicom.spi.Peer;
import dev.isoline.dicom.spi.Remote;
import dev.isoline.dicom.spi.Services;
import dev.isoline.dicom.spi.SopReference;
import dev.isoline.dicom.spi.Status;
import dev.isoline.dicom.spi.StorageProvider;
import dev.isoline.dicom.spi.StoreRequest;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

/**
 * An archive that takes objects by C-STORE (PS3.4 annex B) and commits itself to them (annex J). It
 * reports on an association of its own, in which it is the requestor and the SCP (J.3.3).
 */
public final class StorageArchive implements Closeable {

    private static final DicomEngine ENGINE = DicomEngine.find();
    private static final int ASSOCIATIONS = 16;

    private final AeTitle title;
    private final AeTitle caller;
    private final int callerPort;
    private final Path folder;
    private final Inbox<Report> reports = new Inbox<>();
    private final ExecutorService reporter = Executors.newSingleThreadExecutor(StorageArchive::own);
    private final Listener listener;

    /**
     * What was reported.
     *
     * @param answer how who had asked answered
     */
    public record Report(CommitmentResult result, Status answer) {}

    /**
     * @param title ours
     * @param caller whom we let in, and report to
     * @param callerPort where it listens
     * @param folder for the objects, named by their SOP Instance UID
     */
    public StorageArchive(String title, String caller, int callerPort, Path folder)
            throws IOException {
        this.title = new AeTitle(title);
        this.caller = new AeTitle(caller);
        this.callerPort = callerPort;
        this.folder = folder;
        this.listener =
                ENGINE.listen(
                        Local.of(this.title, "127.0.0.1", 0)
                                .with(new Admission(Set.of(this.caller), false, ASSOCIATIONS)),
                        Services.echoing()
                                .storing(EcgSopClasses.ALL, new Storage())
                                .committing(new Commitment()));
    }

    private static Thread own(Runnable work) {
        var thread = new Thread(work, "archive-reports");
        thread.setDaemon(true);
        return thread;
    }

    public int port() {
        return listener.address().getPort();
    }

    /** What was reported so far. */
    public Inbox<Report> reports() {
        return reports;
    }

    private Path file(String sopInstance) {
        return folder.resolve(sopInstance + ".dcm");
    }

    private final class Storage implements StorageProvider {

        @Override
        public Path file(StoreRequest request) {
            return folder.resolve(UUID.randomUUID() + ".part");
        }

        @Override
        public Status stored(StoreRequest request, Path part, DataSet head) throws IOException {
            Files.move(
                    part,
                    StorageArchive.this.file(request.instance().sopInstance()),
                    StandardCopyOption.REPLACE_EXISTING);
            return Status.SUCCESS;
        }
    }

    private final class Commitment implements CommitmentProvider {

        @Override
        public Status request(Peer peer, CommitmentRequest request) {
            reporter.execute(() -> report(request));
            return Status.SUCCESS;
        }
    }

    private void report(CommitmentRequest request) {
        CommitmentResult result = result(request);
        reports.add(new Report(result, tell(result)));
    }

    private Status tell(CommitmentResult result) {
        var remote = Remote.of("127.0.0.1", callerPort, caller, title);
        try (var association = ENGINE.associate(remote, Offer.commitmentResults())) {
            return association.reportCommitment(result);
        } catch (IOException e) {
            return Status.PROCESSING_FAILURE.because(e.getMessage());
        }
    }

    /** What is on disk is committed, anything else unknown: 0112H. */
    private CommitmentResult result(CommitmentRequest request) {
        List<SopReference> here = request.references().stream().filter(this::has).toList();
        List<Failure> missing =
                request.references().stream()
                        .filter(reference -> !has(reference))
                        .map(reference -> new Failure(reference, Status.NO_SUCH_INSTANCE))
                        .toList();
        return new CommitmentResult(request.transaction(), here, missing);
    }

    private boolean has(SopReference reference) {
        return Files.isRegularFile(file(reference.sopInstance()));
    }

    @Override
    public void close() {
        listener.close();
        reporter.shutdown();
    }
}
