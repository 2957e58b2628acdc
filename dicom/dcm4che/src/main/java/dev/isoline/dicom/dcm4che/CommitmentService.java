package dev.isoline.dicom.dcm4che;

import dev.isoline.dicom.spi.CommitmentResults;
import dev.isoline.dicom.spi.Services;
import dev.isoline.dicom.spi.Status;
import java.io.IOException;
import org.dcm4che3.data.Attributes;
import org.dcm4che3.net.Association;
import org.dcm4che3.net.Dimse;
import org.dcm4che3.net.DimseRQHandler;
import org.dcm4che3.net.PDVInputStream;
import org.dcm4che3.net.pdu.PresentationContext;

/** Storage commitment on associations that peers open, PS3.4 J.3: requests and results. */
final class CommitmentService implements DimseRQHandler {

    private static final CommitmentResults NOT_SERVED = (peer, result) -> Status.NO_SUCH_SOP_CLASS;

    private final Services services;
    private final CommitmentArrivals arrivals;

    CommitmentService(Services services) {
        this.services = services;
        this.arrivals = new CommitmentArrivals(services.commitmentResults().orElse(NOT_SERVED));
    }

    @Override
    public void onDimseRQ(
            Association association,
            PresentationContext context,
            Dimse dimse,
            Attributes command,
            PDVInputStream data)
            throws IOException {
        if (dimse == Dimse.N_ACTION_RQ && services.commitment().isPresent()) {
            new CommitmentRequests(services.commitment().get())
                    .receive(association, context, command, data);
        } else {
            arrivals.onDimseRQ(association, context, dimse, command, data);
        }
    }

    @Override
    public void onClose(Association association) {
        arrivals.onClose(association);
    }
}
