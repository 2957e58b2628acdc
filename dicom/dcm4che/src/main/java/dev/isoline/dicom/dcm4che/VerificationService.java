package dev.isoline.dicom.dcm4che;

import dev.isoline.dicom.spi.Status;
import dev.isoline.dicom.spi.VerificationProvider;
import java.io.IOException;
import org.dcm4che3.data.Attributes;
import org.dcm4che3.net.Association;
import org.dcm4che3.net.Dimse;
import org.dcm4che3.net.DimseRQHandler;
import org.dcm4che3.net.PDVInputStream;
import org.dcm4che3.net.pdu.PresentationContext;

/** C-ECHO as SCP, PS3.7 9.1.5. */
final class VerificationService implements DimseRQHandler {

    private final VerificationProvider provider;

    VerificationService(VerificationProvider provider) {
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
        Status status =
                dimse == Dimse.C_ECHO_RQ
                        ? Commands.answer(
                                () -> provider.echo(Peers.of(association)),
                                Status.PROCESSING_FAILURE)
                        : Status.UNRECOGNIZED_OPERATION;
        association.writeDimseRSP(
                context,
                Commands.with(
                        org.dcm4che3.net.Commands.mkRSP(command, status.code(), dimse), status));
    }

    @Override
    public void onClose(Association association) {
        // nothing is kept
    }
}
