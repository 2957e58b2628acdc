package dev.isoline.dicom.upper;

import dev.isoline.dicom.spi.MaxPdu;
import dev.isoline.dicom.spi.Rejection;
import dev.isoline.dicom.spi.Remote;
import dev.isoline.dicom.spi.Timeouts;
import java.io.IOException;
import java.net.InetAddress;
import java.nio.ByteBuffer;
import java.util.Optional;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;

/**
 * The upper layer service of one association, PS3.8 chapter 7: its methods are the request and
 * response primitives of the local user, what they return are the indications.
 *
 * <p>One thread at a time reads, any may send and abort. When the association has ended, every
 * method throws what ended it.
 */
public final class UpperLayer {

    private final Transport transport;
    private final Provider provider;
    private final PduInput input;
    private final ReentrantLock reading = new ReentrantLock();

    private UpperLayer(boolean requestor, Transport transport, Timeouts timeouts, MaxPdu maxPdu) {
        var watch = new Watch(transport, timeouts);
        this.transport = transport;
        this.provider = new Provider(requestor, transport, watch);
        this.input = new PduInput(new Incoming(transport, watch), maxPdu.receive());
    }

    /** To a peer; nothing is connected yet. */
    public static UpperLayer to(Remote remote) throws IOException {
        PlainTransport tcp = PlainTransport.to(remote.host(), remote.port());
        Optional<String> host = Optional.of(remote.host());
        Transport transport =
                remote.tls().<Transport>map(t -> new TlsTransport(tcp, t, host)).orElse(tcp);
        return new UpperLayer(true, transport, remote.timeouts(), remote.maxPdu());
    }

    /** From a peer that has just connected. */
    static UpperLayer from(Transport transport, Timeouts timeouts, MaxPdu maxPdu) {
        return new UpperLayer(false, transport, timeouts, maxPdu);
    }

    public InetAddress address() {
        return transport.address();
    }

    /** Subject of the certificate the peer showed. */
    public Optional<String> certificate() {
        return transport.certificate();
    }

    /** A-ASSOCIATE request; returns its confirmation. */
    public Pdu.AssociateAc associate(Pdu.AssociateRq rq) throws IOException {
        provider.request(Event.A_ASSOCIATE_REQUEST, null);
        provider.request(Event.TRANSPORT_CONFIRMATION, rq);
        Pdu answer = await(Wait.ASSOCIATION);
        if (answer instanceof Pdu.AssociateRj rj) {
            provider.endBy(new Rejection(rj.result(), rj.source(), rj.reason()));
            throw provider.end();
        }
        return (Pdu.AssociateAc) answer;
    }

    /**
     * Waits for an A-ASSOCIATE indication.
     *
     * @param policy the rejection of the service provider, where it does not accept the request
     */
    Pdu.AssociateRq awaitAssociation(Function<Pdu.AssociateRq, Optional<Pdu.AssociateRj>> policy)
            throws IOException {
        provider.policy(policy);
        provider.request(Event.TRANSPORT_INDICATION, null);
        try {
            transport.open();
        } catch (IOException e) {
            throw provider.lost(e);
        }
        return (Pdu.AssociateRq) await(Wait.ARTIM);
    }

    /** A-ASSOCIATE response, accepting. */
    void accept(Pdu.AssociateAc ac) throws IOException {
        provider.request(Event.A_ASSOCIATE_RESPONSE_ACCEPT, ac);
    }

    /** A-ASSOCIATE response, rejecting; when the connection is closed, throws the rejection. */
    void reject(Pdu.AssociateRj rj) throws IOException {
        provider.endBy(new Rejection(rj.result(), rj.source(), rj.reason()));
        provider.request(Event.A_ASSOCIATE_RESPONSE_REJECT, rj);
        awaitClose();
        throw provider.end();
    }

    /**
     * The next P-DATA indication; what is left of the one before is skipped.
     *
     * @return empty where the peer asks for release instead: {@link #confirmRelease} is due
     */
    public Optional<Pdv> pdv(Wait wait) throws IOException {
        Optional<Pdv> pdv = nextPdv(wait);
        while (pdv.isEmpty()) {
            if (await(wait) instanceof Pdu.ReleaseRq) {
                return Optional.empty();
            }
            pdv = nextPdv(wait);
        }
        return pdv;
    }

    private Optional<Pdv> nextPdv(Wait wait) throws IOException {
        return read(() -> input.pdv(wait));
    }

    /**
     * The next bytes of the fragment, to be used before anything else is read; empty at its end.
     */
    public ByteBuffer fragment() throws IOException {
        return read(() -> input.fragment(Wait.RESPONSE));
    }

    /** True where something arrives in time, be it the end of the connection. */
    public boolean arrives(int millis) throws IOException {
        return read(() -> input.arrives(millis));
    }

    /** True where the association has ended otherwise than by release. */
    public boolean ended() {
        return provider.end() != null;
    }

    /** True where bytes of a response are known to have arrived. */
    public boolean readable() throws IOException {
        return transport.readable();
    }

    /** P-DATA request of an encoded P-DATA-TF. */
    void send(ByteBuffer octets) throws IOException {
        provider.request(Event.P_DATA_REQUEST, new Pdu.PDataTf(octets));
    }

    /**
     * A-RELEASE request; returns when the connection is closed. Data that still comes is dropped.
     */
    public void release() throws IOException {
        provider.request(Event.A_RELEASE_REQUEST, new Pdu.ReleaseRq());
        Pdu answer;
        do {
            answer = await(Wait.RELEASE);
            if (provider.state() == State.STA_9) {
                provider.request(Event.A_RELEASE_RESPONSE, new Pdu.ReleaseRp());
            }
        } while (!(answer instanceof Pdu.ReleaseRp));
        if (provider.state() == State.STA_12) {
            confirmRelease();
        }
    }

    /** A-RELEASE response; returns when the connection is closed. */
    public void confirmRelease() throws IOException {
        provider.request(Event.A_RELEASE_RESPONSE, new Pdu.ReleaseRp());
        awaitClose();
    }

    /**
     * A-ABORT request; from any thread. The connection is closed when the peer closes it and a
     * thread is reading, at the latest when ARTIM expires.
     */
    public void abort(String why) {
        try {
            if (!provider.abort(why)) {
                transport.abandon();
            }
        } catch (IOException gone) {
            transport.abandon();
        }
    }

    /** Closes the connection at once; from any thread. */
    public void abandon() {
        transport.abandon();
    }

    /** The data that arrived does not make sense: A-ABORT of the service provider. */
    public IOException refuse(String fault) throws IOException {
        return invalid(InvalidPdu.parameter(fault));
    }

    /** Gives its memory back; nothing else may follow. */
    public void dispose() {
        reading.lock();
        try {
            input.end();
        } finally {
            reading.unlock();
        }
    }

    /** The next indication of the peer, or what ended the association. */
    private Pdu await(Wait wait) throws IOException {
        Pdu issued;
        do {
            receive(wait);
            awaitClose();
            if (provider.end() != null) {
                throw provider.end();
            }
            issued = provider.takeIssued();
        } while (issued == null);
        return issued;
    }

    /** In Sta13, reads until the peer closes the connection or ARTIM expires. */
    private void awaitClose() throws IOException {
        while (provider.state() == State.STA_13) {
            receive(Wait.ARTIM);
        }
    }

    private void receive(Wait wait) throws IOException {
        reading.lock();
        try {
            provider.received(input.pdu(wait));
        } catch (InvalidPdu e) {
            provider.received(e);
        } catch (IOException e) {
            provider.lost(e);
        } finally {
            reading.unlock();
        }
    }

    private interface Reading<T> {
        T now() throws IOException;
    }

    private <T> T read(Reading<T> what) throws IOException {
        reading.lock();
        try {
            if (provider.end() != null) {
                throw provider.end();
            }
            return what.now();
        } catch (InvalidPdu e) {
            throw invalid(e);
        } catch (IOException e) {
            throw provider.lost(e);
        } finally {
            reading.unlock();
        }
    }

    private IOException invalid(InvalidPdu fault) throws IOException {
        provider.received(fault);
        awaitClose();
        return provider.end();
    }
}
