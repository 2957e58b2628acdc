package dev.isoline.dimse;

import dev.isoline.dicom.spi.AssociationObserver;
import dev.isoline.dicom.spi.Peer;
import dev.isoline.dicom.spi.Rejection;
import java.io.IOException;
import java.net.InetAddress;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Tells the log who called: AE titles and addresses, nothing of what was said. */
final class AssociationLog implements AssociationObserver {

    private static final Logger LOG = LoggerFactory.getLogger("dev.isoline.dimse.associations");

    @Override
    public void accepted(Peer peer) {
        LOG.debug("{} at {} associated", peer.calling(), peer.address().getHostAddress());
    }

    @Override
    public void rejected(InetAddress address, Rejection rejection) {
        LOG.warn("{}: {}", address.getHostAddress(), rejection.getMessage());
    }

    @Override
    public void broken(Peer peer, IOException cause) {
        LOG.warn(
                "The association with {} at {} broke: {}",
                peer.calling(),
                peer.address().getHostAddress(),
                cause.getMessage());
    }

    @Override
    public void stillborn(InetAddress address, IOException cause) {
        LOG.warn("A connection from {} made no association", address.getHostAddress());
    }
}
