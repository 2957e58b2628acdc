package dev.isoline.dicom.dcm4che;

import dev.isoline.dicom.spi.AeTitle;
import dev.isoline.dicom.spi.Peer;
import java.net.Socket;
import java.util.Objects;
import java.util.Optional;
import javax.net.ssl.SSLPeerUnverifiedException;
import javax.net.ssl.SSLSocket;
import org.dcm4che3.net.Association;

/** Who is at the other end. */
final class Peers {

    private Peers() {}

    static Peer of(Association association) {
        return new Peer(
                new AeTitle(association.getCallingAET()),
                new AeTitle(association.getCalledAET()),
                association.getSocket().getInetAddress(),
                Objects.requireNonNullElse(association.getRemoteImplClassUID(), ""),
                Objects.requireNonNullElse(association.getRemoteImplVersionName(), ""),
                certificate(association.getSocket()));
    }

    private static Optional<String> certificate(Socket socket) {
        if (!(socket instanceof SSLSocket secured)) {
            return Optional.empty();
        }
        try {
            return Optional.of(secured.getSession().getPeerPrincipal().getName());
        } catch (SSLPeerUnverifiedException none) {
            return Optional.empty();
        }
    }
}
