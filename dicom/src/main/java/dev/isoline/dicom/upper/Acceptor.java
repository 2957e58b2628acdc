package dev.isoline.dicom.upper;

import dev.isoline.dicom.spi.AeTitle;
import dev.isoline.dicom.spi.AssociationObserver;
import dev.isoline.dicom.spi.Local;
import dev.isoline.dicom.spi.Peer;
import dev.isoline.dicom.spi.Rejection;
import java.io.IOException;
import java.nio.channels.SocketChannel;
import java.util.Optional;
import java.util.concurrent.Semaphore;

/** One connection of a {@link Server}, from its opening to its end. */
final class Acceptor {

    private static final Pdu.AssociateRj VERSION_NOT_SUPPORTED = new Pdu.AssociateRj(1, 2, 2);
    private static final Pdu.AssociateRj LOCAL_LIMIT_EXCEEDED = new Pdu.AssociateRj(2, 3, 2);
    private static final Pdu.AssociateRj CONTEXT_NOT_SUPPORTED = new Pdu.AssociateRj(1, 1, 2);
    private static final Pdu.AssociateRj CALLING_NOT_RECOGNISED = new Pdu.AssociateRj(1, 1, 3);
    private static final Pdu.AssociateRj CALLED_NOT_RECOGNISED = new Pdu.AssociateRj(1, 1, 7);

    private final Local local;
    private final AssociationHandler handler;
    private final Semaphore associations;
    private final UpperLayer layer;
    private boolean counted;
    private Thread thread;

    Acceptor(
            Local local,
            AssociationHandler handler,
            Semaphore associations,
            SocketChannel connection) {
        this.local = local;
        this.handler = handler;
        this.associations = associations;
        PlainTransport tcp = PlainTransport.from(connection);
        Transport transport =
                local.tls()
                        .<Transport>map(t -> new TlsTransport(tcp, t, Optional.empty()))
                        .orElse(tcp);
        this.layer = UpperLayer.from(transport, local.timeouts(), local.maxPdu());
    }

    void thread(Thread running) {
        thread = running;
    }

    void join(long until) {
        Server.join(thread, until);
    }

    void abort() {
        layer.abort("the listener is being closed");
    }

    void abandon() {
        layer.abandon();
    }

    void run() {
        try {
            associate();
        } finally {
            layer.abandon();
            layer.dispose();
            if (counted) {
                associations.release();
            }
        }
    }

    private void associate() {
        try {
            answer(layer.awaitAssociation(this::policy));
        } catch (Rejection e) {
            handler.observer().rejected(layer.address(), e);
        } catch (IOException e) {
            handler.observer().stillborn(layer.address(), e);
        }
    }

    /** What the service provider does not accept, PS3.8 table 9-21 sources 2 and 3. */
    private Optional<Pdu.AssociateRj> policy(Pdu.AssociateRq rq) {
        if ((rq.version() & 1) == 0) {
            return Optional.of(VERSION_NOT_SUPPORTED);
        }
        counted = associations.tryAcquire();
        return counted ? Optional.empty() : Optional.of(LOCAL_LIMIT_EXCEEDED);
    }

    private void answer(Pdu.AssociateRq rq) throws IOException {
        Optional<AeTitle> calling = title(rq.calling());
        Optional<AeTitle> called = title(rq.called());
        if (!rq.applicationContext().equals(Pdu.APPLICATION_CONTEXT)) {
            layer.reject(CONTEXT_NOT_SUPPORTED);
        } else if (called.isEmpty() || !answersTo(called.get())) {
            layer.reject(CALLED_NOT_RECOGNISED);
        } else if (calling.isEmpty() || !local.admission().knows(calling.get())) {
            layer.reject(CALLING_NOT_RECOGNISED);
        } else {
            accept(rq, peer(rq, calling.get(), called.get()));
        }
    }

    private boolean answersTo(AeTitle called) {
        var admission = local.admission();
        return admission.anyCalled()
                || called.equals(local.title())
                || admission.called().contains(called);
    }

    private static Optional<AeTitle> title(String field) {
        try {
            return Optional.of(new AeTitle(field));
        } catch (IllegalArgumentException none) {
            return Optional.empty();
        }
    }

    private Peer peer(Pdu.AssociateRq rq, AeTitle calling, AeTitle called) {
        return new Peer(
                calling,
                called,
                layer.address(),
                rq.user().implementationClass(),
                rq.user().implementationVersion(),
                layer.certificate());
    }

    private void accept(Pdu.AssociateRq rq, Peer peer) throws IOException {
        Acceptance acceptance = Acceptance.of(rq, handler::supported);
        var user = UserInformation.ours(local.maxPdu().receive(), acceptance.roles());
        layer.accept(new Pdu.AssociateAc(rq.called(), rq.calling(), acceptance.results(), user));
        AssociationObserver observer = handler.observer();
        observer.accepted(peer);
        int peerMaxPdu = rq.user().maxLength();
        try {
            handler.serve(new AcceptedAssociation(layer, peer, acceptance.accepted(), peerMaxPdu));
            observer.released(peer);
        } catch (IOException e) {
            observer.broken(peer, e);
        } catch (RuntimeException e) {
            layer.abort("our own failure");
            observer.broken(peer, new IOException(e.getClass().getName(), e));
        }
    }
}
