package dev.isoline.dicom.upper;

import dev.isoline.dicom.spi.Abort;
import dev.isoline.dicom.spi.Rejection;
import java.io.IOException;
import java.net.SocketTimeoutException;
import java.nio.ByteBuffer;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;

/**
 * Carries out what the state table says: sends, closes, starts ARTIM, and keeps what was issued to
 * the local user and what ended the association. Every event passes here, from any thread.
 */
final class Provider {

    private final Machine machine;
    private final Transport transport;
    private final Watch watch;

    /** Guards the machine, and the order of what is sent. */
    private final ReentrantLock lock = new ReentrantLock();

    private Function<Pdu.AssociateRq, Optional<Pdu.AssociateRj>> policy = rq -> Optional.empty();
    private Pdu issued;
    private volatile IOException end;

    Provider(boolean requestor, Transport transport, Watch watch) {
        this.machine = new Machine(requestor);
        this.transport = transport;
        this.watch = watch;
    }

    State state() {
        return machine.state();
    }

    /** What ended the association, null where nothing has. */
    IOException end() {
        return end;
    }

    /** Who says, for AE-6, whether the service provider accepts a request. */
    void policy(Function<Pdu.AssociateRq, Optional<Pdu.AssociateRj>> provider) {
        policy = provider;
    }

    /** The first cause stays. */
    void endBy(IOException cause) {
        end = end == null ? cause : end;
    }

    /** What the last PDU issued to the local user; null where it was nothing. */
    Pdu takeIssued() {
        Pdu taken = issued;
        issued = null;
        return taken;
    }

    /** A primitive of the local user. */
    void request(Event event, Pdu pdu) throws IOException {
        lock.lock();
        try {
            if (!machine.allows(event)) {
                throw ended();
            }
            on(event, pdu, InvalidPdu.UNEXPECTED, "");
        } catch (IOException e) {
            throw lost(e);
        } finally {
            lock.unlock();
        }
    }

    /** A PDU arrived. */
    void received(Pdu pdu) throws IOException {
        received(pdu.received(), pdu, InvalidPdu.UNEXPECTED, pdu.getClass().getSimpleName());
    }

    /** Something arrived that is no PDU. */
    void received(InvalidPdu fault) throws IOException {
        received(Event.INVALID_PDU, null, fault.reason(), fault.getMessage());
    }

    private void received(Event event, Pdu pdu, int reason, String detail) throws IOException {
        lock.lock();
        try {
            if (!machine.allows(event)) { // another thread has seen the end before
                throw ended();
            }
            on(event, pdu, reason, detail);
        } finally {
            lock.unlock();
        }
    }

    private IOException ended() {
        endBy(new IOException("the association has ended"));
        return end;
    }

    /** A-ABORT request; false where another thread cannot finish sending. */
    boolean abort(String why) throws IOException {
        if (!locked()) {
            return false;
        }
        try {
            if (machine.allows(Event.A_ABORT_REQUEST)) {
                on(Event.A_ABORT_REQUEST, null, InvalidPdu.UNEXPECTED, why);
            }
            return true;
        } finally {
            lock.unlock();
        }
    }

    private boolean locked() {
        try {
            return lock.tryLock(1, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    /**
     * The connection cannot be used any more, by itself or because a timer expired.
     *
     * @return what ended the association
     */
    IOException lost(IOException cause) {
        lock.lock();
        try {
            Optional<Wait> expired = watch.expired();
            endBy(expired.<IOException>map(this::timeout).orElse(cause));
            if (expired.isPresent() && machine.allows(Event.A_ABORT_REQUEST)) {
                quietly(Event.A_ABORT_REQUEST);
            }
            quietly(expired.isPresent() ? Event.ARTIM_EXPIRED : Event.TRANSPORT_CLOSED);
            quietly(Event.TRANSPORT_CLOSED);
            return end;
        } finally {
            lock.unlock();
        }
    }

    private void quietly(Event event) {
        if (machine.allows(event)) {
            Quietly.run(() -> on(event, null, InvalidPdu.UNEXPECTED, ""));
        }
    }

    private SocketTimeoutException timeout(Wait wait) {
        return new SocketTimeoutException(wait.failure(watch.timeouts()));
    }

    private void on(Event event, Pdu pdu, int reason, String detail) throws IOException {
        lock.lock();
        try {
            Optional<Pdu.AssociateRj> rejection = rejection(event, pdu);
            Pdu subject = rejection.isPresent() ? rejection.get() : pdu;
            machine.on(event, rejection.isEmpty(), step -> perform(step, subject, reason, detail));
        } finally {
            if (machine.state() == State.STA_1) {
                watch.end();
                transport.close();
            }
            lock.unlock();
        }
    }

    private Optional<Pdu.AssociateRj> rejection(Event event, Pdu pdu) {
        boolean asked = event == Event.A_ASSOCIATE_RQ_PDU && machine.state() == State.STA_2;
        return asked ? policy.apply((Pdu.AssociateRq) pdu) : Optional.empty();
    }

    private void perform(Step step, Pdu pdu, int reason, String detail) throws IOException {
        switch (step) {
            case CONNECT -> connect();
            case SEND -> write(pdu);
            case SEND_REJECTION -> reject((Pdu.AssociateRj) pdu);
            case ISSUE -> issue(pdu);
            case ISSUE_P_ABORT -> endBy(new Abort(false, Abort.PROVIDER, reason, detail));
            case SEND_ABORT_OF_USER -> abort(new Pdu.Abort(Abort.USER, 0), detail);
            case SEND_ABORT_OF_PROVIDER -> abort(new Pdu.Abort(Abort.PROVIDER, reason), detail);
            case START_ARTIM -> watch.start(Wait.ARTIM);
            case STOP_ARTIM -> watch.stop(Wait.ARTIM);
            case CLOSE -> {} // with Sta1, which holds no connection
        }
    }

    private void connect() throws IOException {
        watch.start(Wait.CONNECTION);
        transport.open();
        watch.stop(Wait.CONNECTION);
    }

    private void reject(Pdu.AssociateRj rj) throws IOException {
        endBy(new Rejection(rj.result(), rj.source(), rj.reason()));
        write(rj);
    }

    private void abort(Pdu.Abort abort, String detail) throws IOException {
        endBy(new Abort(false, abort.source(), abort.reason(), detail));
        write(abort);
    }

    private void issue(Pdu pdu) {
        issued = pdu;
        if (pdu instanceof Pdu.Abort abort) {
            endBy(new Abort(true, abort.source(), abort.reason()));
        }
    }

    private void write(Pdu pdu) throws IOException {
        ByteBuffer octets = PduEncoder.encode(pdu);
        while (octets.hasRemaining()) {
            watch.start(Wait.RESPONSE);
            transport.write(octets);
        }
        watch.stop(Wait.RESPONSE);
    }
}
