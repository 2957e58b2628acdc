package dev.isoline.dicom.dcm4che;

import dev.isoline.dicom.spi.AssociationObserver;
import dev.isoline.dicom.spi.Peer;
import dev.isoline.dicom.spi.Rejection;
import org.dcm4che3.net.Association;
import org.dcm4che3.net.AssociationMonitor;
import org.dcm4che3.net.pdu.AAssociateRJ;

/** Tells an observer of the associations of a listener. */
final class Observed implements AssociationMonitor {

    private final AssociationObserver observer;

    Observed(AssociationObserver observer) {
        this.observer = observer;
    }

    @Override
    public void onAssociationAccepted(Association association) {
        Peer peer = Peers.of(association);
        observer.accepted(peer);
        association.addAssociationListener(ended -> ended(peer, ended));
    }

    private void ended(Peer peer, Association association) {
        if (association.getException() == null) {
            observer.released(peer);
        } else {
            observer.broken(peer, association.getException());
        }
    }

    @Override
    public void onAssociationRejected(Association association, AAssociateRJ rejection) {
        observer.rejected(
                association.getSocket().getInetAddress(),
                new Rejection(rejection.getResult(), rejection.getSource(), rejection.getReason()));
    }

    @Override
    public void onAssociationEstablished(Association association) {
        // the requestor's side is told by the call itself
    }

    @Override
    public void onAssociationFailed(Association association, Throwable cause) {
        // the requestor's side is told by the call itself
    }
}
