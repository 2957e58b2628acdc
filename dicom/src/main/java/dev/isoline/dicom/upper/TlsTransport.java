package dev.isoline.dicom.upper;

import dev.isoline.dicom.spi.Tls;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.ByteBuffer;
import java.security.GeneralSecurityException;
import java.security.cert.X509Certificate;
import java.util.Optional;
import javax.net.ssl.SSLPeerUnverifiedException;
import javax.net.ssl.SSLSocket;
import javax.net.ssl.SSLSocketFactory;

/** TLS over TCP, PS3.15 B.9. */
final class TlsTransport implements Transport {

    /** A record of TLS holds at most this, RFC 8446 5.1. */
    private static final int RECORD = 16 * 1024;

    private final PlainTransport below;
    private final Tls tls;
    private final Optional<String> host;
    private final byte[] record = new byte[RECORD];
    private SSLSocket socket;

    /**
     * @param host whom we call; empty where we are called
     */
    TlsTransport(PlainTransport below, Tls tls, Optional<String> host) {
        this.below = below;
        this.tls = tls;
        this.host = host;
    }

    @Override
    public void open() throws IOException {
        below.open();
        SSLSocketFactory factory = factory();
        Socket tcp = below.channel().socket();
        if (host.isPresent()) {
            socket = (SSLSocket) factory.createSocket(tcp, host.get(), tcp.getPort(), true);
        } else {
            socket = (SSLSocket) factory.createSocket(tcp, null, true);
            socket.setNeedClientAuth(tls.mutual());
        }
        socket.setEnabledProtocols(Tls.PROTOCOLS.toArray(String[]::new));
        socket.startHandshake();
    }

    private SSLSocketFactory factory() throws IOException {
        try {
            return tls.context().getSocketFactory();
        } catch (GeneralSecurityException e) {
            throw new IOException("TLS cannot be set up: " + e.getMessage(), e);
        }
    }

    @Override
    public int read(ByteBuffer target) throws IOException {
        return read(target, 0);
    }

    @Override
    public int read(ByteBuffer target, int millis) throws IOException {
        socket.setSoTimeout(millis);
        int count = socket.getInputStream().read(record, 0, Math.min(RECORD, target.remaining()));
        target.put(record, 0, Math.max(count, 0));
        return count;
    }

    @Override
    public void write(ByteBuffer source) throws IOException {
        byte[] part = new byte[Math.min(source.remaining(), RECORD)];
        source.get(part);
        socket.getOutputStream().write(part);
    }

    /** What was decrypted; the kernel may hold more, but not surely application data. */
    @Override
    public boolean readable() throws IOException {
        return socket.getInputStream().available() > 0;
    }

    @Override
    public InetAddress address() {
        return below.address();
    }

    @Override
    public Optional<String> certificate() {
        try {
            var shown = (X509Certificate) socket.getSession().getPeerCertificates()[0];
            return Optional.of(shown.getSubjectX500Principal().getName());
        } catch (SSLPeerUnverifiedException none) {
            return Optional.empty();
        }
    }

    @Override
    public void shutdownInput() {
        below.shutdownInput();
    }

    @Override
    public void close() {
        if (socket != null) {
            Quietly.run(socket::close);
        }
        below.abandon();
    }

    @Override
    public void abandon() {
        below.abandon();
    }
}
