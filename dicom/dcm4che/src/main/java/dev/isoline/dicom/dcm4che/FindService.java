package dev.isoline.dicom.dcm4che;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.spi.FindProvider;
import dev.isoline.dicom.spi.FindRequest;
import dev.isoline.dicom.spi.Pending;
import dev.isoline.dicom.spi.Status;
import java.io.IOException;
import org.dcm4che3.data.Attributes;
import org.dcm4che3.data.Tag;
import org.dcm4che3.net.Association;
import org.dcm4che3.net.Dimse;
import org.dcm4che3.net.DimseRQHandler;
import org.dcm4che3.net.PDVInputStream;
import org.dcm4che3.net.pdu.PresentationContext;

/** C-FIND as SCP, PS3.7 9.1.2: on a thread of its own, so that a C-CANCEL is seen. */
final class FindService implements DimseRQHandler {

    private final FindProvider provider;

    FindService(FindProvider provider) {
        this.provider = provider;
    }

    @Override
    public void onDimseRQ(
            Association association,
            PresentationContext context,
            Dimse dimse,
            Attributes command,
            PDVInputStream data)
            throws IOException {
        if (dimse != Dimse.C_FIND_RQ) {
            Status status = Status.UNRECOGNIZED_OPERATION;
            association.writeDimseRSP(
                    context, org.dcm4che3.net.Commands.mkRSP(command, status.code(), dimse));
            return;
        }
        var query = new Query(association, context, command);
        try {
            DataSet keys = DataSets.read(data, context.getTransferSyntax());
            String sopClass = command.getString(Tag.AffectedSOPClassUID);
            var request = new FindRequest(Peers.of(association), sopClass, keys);
            association.addCancelRQHandler(query.messageId(), a -> query.cancelled = true);
            association.getDevice().execute(() -> query.run(provider, request));
        } catch (DicomException e) {
            query.end(Status.UNABLE_TO_PROCESS.because(e.getMessage()));
        }
    }

    @Override
    public void onClose(Association association) {
        // a query sees it in the state of the association
    }

    /** One request being answered. */
    private static final class Query implements Pending {

        private final Association association;
        private final PresentationContext context;
        private final Attributes command;
        private volatile boolean cancelled;

        Query(Association association, PresentationContext context, Attributes command) {
            this.association = association;
            this.context = context;
            this.command = command;
        }

        int messageId() {
            return command.getInt(Tag.MessageID, 0);
        }

        void run(FindProvider provider, FindRequest request) {
            Status end =
                    Commands.answer(() -> provider.find(request, this), Status.UNABLE_TO_PROCESS);
            association.removeCancelRQHandler(messageId());
            end(end);
        }

        void end(Status status) {
            association.tryWriteDimseRSP(context, Commands.with(response(status), status));
        }

        private Attributes response(Status status) {
            return org.dcm4che3.net.Commands.mkCFindRSP(command, status.code());
        }

        @Override
        public boolean send(DataSet match, Status status) throws IOException {
            if (cancelled()) {
                return false;
            }
            association.writeDimseRSP(context, response(status), DataSets.attributes(match));
            return true;
        }

        @Override
        public boolean cancelled() {
            return cancelled || association.getException() != null || ended();
        }

        /** Released or broken; while a query runs a release waits, PS3.8 Sta8. */
        private boolean ended() {
            return !association.isReadyForDataTransfer();
        }
    }
}
