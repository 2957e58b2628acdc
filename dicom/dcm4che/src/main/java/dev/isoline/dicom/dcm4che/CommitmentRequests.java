package dev.isoline.dicom.dcm4che;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.spi.CommitmentProvider;
import dev.isoline.dicom.spi.CommitmentRequest;
import dev.isoline.dicom.spi.CommitmentResult;
import dev.isoline.dicom.spi.Commitments;
import dev.isoline.dicom.spi.Peer;
import dev.isoline.dicom.spi.SopClass;
import dev.isoline.dicom.spi.Status;
import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import org.dcm4che3.data.Attributes;
import org.dcm4che3.data.Tag;
import org.dcm4che3.net.Association;
import org.dcm4che3.net.DimseRSPHandler;
import org.dcm4che3.net.PDVInputStream;
import org.dcm4che3.net.pdu.PresentationContext;

/** Answers N-ACTIONs of storage commitment as archive, PS3.4 J.3.2. */
final class CommitmentRequests {

    private final CommitmentProvider provider;

    CommitmentRequests(CommitmentProvider provider) {
        this.provider = provider;
    }

    void receive(
            Association association,
            PresentationContext context,
            Attributes command,
            PDVInputStream data)
            throws IOException {
        Status fault = fault(command);
        if (!fault.isSuccess()) {
            respond(association, context, command, fault);
            return;
        }
        try {
            DataSet information = DataSets.read(data, context.getTransferSyntax());
            answer(association, context, command, Commitments.request(information));
        } catch (DicomException e) {
            Status status = Status.INVALID_ARGUMENT_VALUE.because(e.getMessage());
            respond(association, context, command, status);
        }
    }

    private static Status fault(Attributes command) {
        if (!SopClass.STORAGE_COMMITMENT_INSTANCE.equals(
                command.getString(Tag.RequestedSOPInstanceUID))) {
            return Status.NO_SUCH_INSTANCE;
        }
        return command.getInt(Tag.ActionTypeID, 0) == Commitments.REQUEST
                ? Status.SUCCESS
                : Status.NO_SUCH_ACTION;
    }

    private void answer(
            Association association,
            PresentationContext context,
            Attributes command,
            CommitmentRequest request)
            throws IOException {
        Peer peer = Peers.of(association);
        Status status =
                Commands.answer(() -> provider.request(peer, request), Status.PROCESSING_FAILURE);
        respond(association, context, command, status);
        if (status.isSuccess()) {
            Optional<CommitmentResult> result = provider.result(peer, request);
            if (result.isPresent()) {
                report(association, result.get());
            }
        }
    }

    private static void respond(
            Association association, PresentationContext context, Attributes command, Status status)
            throws IOException {
        association.writeDimseRSP(
                context,
                Commands.with(
                        org.dcm4che3.net.Commands.mkNActionRSP(command, status.code()), status));
    }

    private void report(Association association, CommitmentResult result) throws IOException {
        var answer = new Reported(association.nextMessageID(), result);
        try {
            Faults.translated(
                    () -> {
                        association.neventReport(
                                SopClass.STORAGE_COMMITMENT,
                                SopClass.STORAGE_COMMITMENT_INSTANCE,
                                Commitments.eventType(result),
                                DataSets.attributes(Commitments.dataSet(result)),
                                null,
                                answer);
                        return null;
                    });
        } catch (IOException e) {
            answer.never();
            throw e;
        }
    }

    /** Hands the requestor's answer to the provider, once. */
    private final class Reported extends DimseRSPHandler {

        private final CommitmentResult result;
        private final AtomicBoolean answered = new AtomicBoolean();

        Reported(int messageId, CommitmentResult result) {
            super(messageId);
            this.result = result;
        }

        @Override
        public void onDimseRSP(Association association, Attributes command, Attributes data) {
            super.onDimseRSP(association, command, data);
            report(Commands.status(command));
        }

        @Override
        public void onClose(Association association) {
            super.onClose(association);
            never();
        }

        void never() {
            report(Status.PROCESSING_FAILURE.because("the association ended before"));
        }

        private void report(Status answer) {
            if (answered.compareAndSet(false, true)) {
                provider.reported(result, answer);
            }
        }
    }
}
