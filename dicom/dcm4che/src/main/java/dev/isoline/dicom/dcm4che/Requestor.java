package dev.isoline.dicom.dcm4che;

import dev.isoline.dicom.Part10;
import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.spi.Association;
import dev.isoline.dicom.spi.CommitmentResults;
import dev.isoline.dicom.spi.Offer;
import dev.isoline.dicom.spi.OfferedContext;
import dev.isoline.dicom.spi.Remote;
import dev.isoline.dicom.spi.Role;
import dev.isoline.dicom.spi.SopClass;
import java.io.IOException;
import java.net.SocketTimeoutException;
import java.security.GeneralSecurityException;
import org.dcm4che3.net.Connection;
import org.dcm4che3.net.IncompatibleConnectionException;
import org.dcm4che3.net.pdu.AAbort;
import org.dcm4che3.net.pdu.AAssociateRQ;
import org.dcm4che3.net.pdu.PresentationContext;
import org.dcm4che3.net.pdu.RoleSelection;
import org.dcm4che3.net.service.DicomServiceRegistry;

/** Opens associations, PS3.8 7.1. */
final class Requestor {

    private Requestor() {}

    static Association associate(Remote remote, Offer offer, CommitmentResults results)
            throws IOException {
        var node =
                new Node(
                        remote.calling().value(), remote.maxPdu(), remote.timeouts(), remote.tls());
        try {
            var arrivals = new CommitmentArrivals(results);
            var services = new DicomServiceRegistry();
            services.addDimseRQHandler(arrivals, SopClass.STORAGE_COMMITMENT);
            node.device().setDimseRQHandler(services);
            return new ScuAssociation(node, connect(node, remote, offer), offer, arrivals);
        } catch (IOException | RuntimeException e) {
            node.close();
            throw e;
        }
    }

    private static org.dcm4che3.net.Association connect(Node node, Remote remote, Offer offer)
            throws IOException {
        long start = System.nanoTime();
        try {
            return Faults.translated(() -> connect(node, there(remote), request(remote, offer)));
        } catch (dev.isoline.dicom.spi.Abort e) {
            long wait = remote.timeouts().associate().toNanos();
            if (wait > 0
                    && System.nanoTime() - start >= wait
                    && e.source() == AAbort.UL_SERIVE_USER) {
                throw new SocketTimeoutException(
                        "no answer to A-ASSOCIATE-RQ within "
                                + remote.timeouts().associate().toMillis()
                                + " ms");
            }
            throw e;
        }
    }

    private static org.dcm4che3.net.Association connect(
            Node node, Connection there, AAssociateRQ request)
            throws IOException, InterruptedException {
        try {
            return node.entity().connect(node.connection(), there, request);
        } catch (IncompatibleConnectionException | GeneralSecurityException e) {
            throw new IOException("TLS cannot be set up: " + e.getMessage(), e);
        }
    }

    private static Connection there(Remote remote) throws IOException {
        var there = new Connection(null, remote.host(), remote.port());
        if (remote.tls().isPresent()) {
            Node.secure(there, remote.tls().get());
        }
        return there;
    }

    private static AAssociateRQ request(Remote remote, Offer offer) {
        var request = new AAssociateRQ();
        request.setCallingAET(remote.calling().value());
        request.setCalledAET(remote.called().value());
        request.setImplClassUID(Part10.IMPLEMENTATION_CLASS);
        request.setImplVersionName(Part10.IMPLEMENTATION_VERSION);
        for (OfferedContext context : offer.contexts()) {
            int id = 2 * request.getNumberOfPresentationContexts() + 1;
            request.addPresentationContext(
                    new PresentationContext(
                            id,
                            context.abstractSyntax(),
                            context.transferSyntaxes().stream()
                                    .map(TransferSyntax::uid)
                                    .toArray(String[]::new)));
            if (context.role() != Role.SCU) {
                request.addRoleSelection(role(context));
            }
        }
        return request;
    }

    private static RoleSelection role(OfferedContext context) {
        Role role = context.role();
        return new RoleSelection(context.abstractSyntax(), role.scu(), role.scp());
    }
}
