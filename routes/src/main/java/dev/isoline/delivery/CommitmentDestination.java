package dev.isoline.delivery;

import dev.isoline.dicom.spi.CommitmentRequest;
import dev.isoline.dicom.spi.Status;
import dev.isoline.ledger.DeliveryTable.NewDelivery;
import java.io.IOException;
import java.time.Duration;
import java.util.Optional;

/** Asks an archive to commit itself to the objects of an order it has stored (PS3.4 J.3.2). */
final class CommitmentDestination implements Destination {

    private final String archive;
    private final String title;
    private final ArchiveLine line;
    private final Duration within;
    private final Commitments commitments;

    /**
     * @param archive destination of the objects
     * @param title its AE title
     * @param within how long it may take to report
     */
    CommitmentDestination(
            String archive,
            String title,
            ArchiveLine line,
            Duration within,
            Commitments commitments) {
        this.archive = archive;
        this.title = title;
        this.line = line;
        this.within = within;
        this.commitments = commitments;
    }

    @Override
    public int parallel() {
        return 1;
    }

    @Override
    public Verdict send(NewDelivery delivery) throws IOException {
        Optional<CommitmentRequest> request = commitments.open(archive, delivery.orderId());
        if (request.isEmpty()) {
            return Verdict.delivered("nothing is left to be committed");
        }
        Verdict verdict = ArchiveDestination.judge(() -> ask(request.get()));
        return verdict.outcome() == Verdict.Outcome.DELIVERED
                ? Verdict.awaiting("no report yet on " + request.get().transaction(), within)
                : verdict;
    }

    private Status ask(CommitmentRequest request) throws IOException {
        return line.requestCommitment(request, (peer, result) -> commitments.result(title, result));
    }
}
