package dev.isoline.dicom.dcm4che;

import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.spi.CommitmentResult;
import dev.isoline.dicom.spi.CommitmentResults;
import dev.isoline.dicom.spi.Commitments;
import dev.isoline.dicom.spi.SopClass;
import dev.isoline.dicom.spi.Status;
import java.io.IOException;
import java.time.Duration;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.dcm4che3.data.Attributes;
import org.dcm4che3.data.Tag;
import org.dcm4che3.net.Association;
import org.dcm4che3.net.Dimse;
import org.dcm4che3.net.DimseRQHandler;
import org.dcm4che3.net.PDVInputStream;
import org.dcm4che3.net.pdu.PresentationContext;

/** Takes N-EVENT-REPORTs of storage commitment, PS3.4 J.3.3. */
final class CommitmentArrivals implements DimseRQHandler {

    /** How soon the end of an association is seen. */
    private static final long LOOK_EVERY_MILLIS = 50;

    private final CommitmentResults results;
    private final Semaphore arrived = new Semaphore(0);

    CommitmentArrivals(CommitmentResults results) {
        this.results = results;
    }

    @Override
    public void onDimseRQ(
            Association association,
            PresentationContext context,
            Dimse dimse,
            Attributes request,
            PDVInputStream data)
            throws IOException {
        if (dimse == Dimse.N_EVENT_REPORT_RQ) {
            Status status = status(association, context, request, data);
            association.writeDimseRSP(
                    context,
                    Commands.with(
                            org.dcm4che3.net.Commands.mkNEventReportRSP(request, status.code()),
                            status));
            arrived.release();
        } else {
            association.writeDimseRSP(
                    context,
                    org.dcm4che3.net.Commands.mkRSP(
                            request, Status.UNRECOGNIZED_OPERATION.code(), dimse));
        }
    }

    private Status status(
            Association association,
            PresentationContext context,
            Attributes request,
            PDVInputStream data) {
        if (!SopClass.STORAGE_COMMITMENT.equals(request.getString(Tag.AffectedSOPClassUID))) {
            return Status.SOP_CLASS_NOT_SUPPORTED;
        }
        int type = request.getInt(Tag.EventTypeID, 0);
        if (type != Commitments.ALL_COMMITTED && type != Commitments.FAILURES_EXIST) {
            return Status.NO_SUCH_EVENT_TYPE;
        }
        return Commands.answer(() -> taken(association, context, data), Status.PROCESSING_FAILURE);
    }

    private Status taken(Association association, PresentationContext context, PDVInputStream data)
            throws IOException {
        CommitmentResult result;
        try {
            result = Commitments.result(DataSets.read(data, context.getTransferSyntax()));
        } catch (DicomException e) {
            return Status.INVALID_ARGUMENT_VALUE.because(e.getMessage());
        }
        return results.result(Peers.of(association), result);
    }

    /**
     * Waits for one.
     *
     * @return false where none came in time or the association ended
     */
    boolean await(Association association, Duration atMost) throws InterruptedException {
        long end = System.nanoTime() + atMost.toNanos();
        boolean one = arrived.tryAcquire();
        while (!one && System.nanoTime() < end && association.isReadyForDataTransfer()) {
            one = arrived.tryAcquire(LOOK_EVERY_MILLIS, TimeUnit.MILLISECONDS);
        }
        return one || arrived.tryAcquire();
    }

    @Override
    public void onClose(Association association) {
        // whoever waits sees it in the state of the association
    }
}
