package dev.isoline.dicom.spi;

import java.io.IOException;
import java.net.InetAddress;

/** Is told of the associations of a listener, for audit and figures; must not throw or block. */
public interface AssociationObserver {

    /** An association was accepted. */
    default void accepted(Peer peer) {}

    /** An association was rejected. */
    default void rejected(InetAddress address, Rejection rejection) {}

    /** It was released in order. */
    default void released(Peer peer) {}

    /** It ended by an {@link Abort} of either side, a time-out or a broken connection. */
    default void broken(Peer peer, IOException cause) {}

    /** A connection ended before it was an association: no request, or one that is no PDU. */
    default void stillborn(InetAddress address, IOException cause) {}
}
