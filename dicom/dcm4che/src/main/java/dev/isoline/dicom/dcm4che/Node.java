package dev.isoline.dicom.dcm4che;

import dev.isoline.dicom.Part10;
import dev.isoline.dicom.spi.MaxPdu;
import dev.isoline.dicom.spi.Timeouts;
import dev.isoline.dicom.spi.Tls;
import java.io.IOException;
import java.security.GeneralSecurityException;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import org.dcm4che3.net.ApplicationEntity;
import org.dcm4che3.net.Association;
import org.dcm4che3.net.AssociationHandler;
import org.dcm4che3.net.Connection;
import org.dcm4che3.net.Device;
import org.dcm4che3.net.pdu.AAssociateAC;
import org.dcm4che3.net.pdu.AAssociateRQ;
import org.dcm4che3.net.pdu.UserIdentityAC;

/** Our side of the network as dcm4che models it: one device, one connection, one entity. */
final class Node implements AutoCloseable {

    /** Bytes of a P-DATA-TF sent where nobody sets a limit. */
    private static final int LONGEST_SENT = 1 << 20;

    private final Device device = new Device("isoline");
    private final Connection connection = new Connection();
    private final ApplicationEntity entity;
    private final ExecutorService threads = Executors.newCachedThreadPool(Node::daemon);
    private final ScheduledExecutorService timers =
            Executors.newSingleThreadScheduledExecutor(Node::daemon);

    Node(String title, MaxPdu maxPdu, Timeouts timeouts, Optional<Tls> tls) throws IOException {
        entity = new ApplicationEntity(title);
        device.setExecutor(threads);
        device.setScheduledExecutor(timers);
        device.setAssociationHandler(new Answering());
        device.addConnection(connection);
        device.addApplicationEntity(entity);
        entity.addConnection(connection);
        lengths(maxPdu);
        waits(timeouts);
        if (tls.isPresent()) {
            secure(tls.get());
        }
    }

    private static Thread daemon(Runnable work) {
        var thread = new Thread(work, "dcm4che");
        thread.setDaemon(true);
        return thread;
    }

    /** dcm4che makes a buffer of the length to send, which therefore has a limit. */
    private void lengths(MaxPdu maxPdu) {
        connection.setReceivePDULength(maxPdu.receive());
        connection.setSendPDULength(maxPdu.send() == 0 ? LONGEST_SENT : maxPdu.send());
    }

    private void waits(Timeouts timeouts) {
        connection.setConnectTimeout(millis(timeouts.connect()));
        connection.setRequestTimeout(millis(timeouts.artim()));
        connection.setAcceptTimeout(millis(timeouts.associate()));
        connection.setResponseTimeout(millis(timeouts.response()));
        connection.setRetrieveTimeout(millis(timeouts.response()));
        connection.setIdleTimeout(millis(timeouts.idle()));
        connection.setReleaseTimeout(millis(timeouts.release()));
    }

    private static int millis(Duration time) {
        return Math.toIntExact(time.toMillis());
    }

    private void secure(Tls tls) throws IOException {
        tls.keys().stream().findFirst().ifPresent(device::setKeyManager);
        tls.trusted().stream().findFirst().ifPresent(device::setTrustManager);
        secure(connection, tls);
    }

    /** Protocols and cipher suites; dcm4che connects only where both ends list a common one. */
    static void secure(Connection connection, Tls tls) throws IOException {
        try {
            var suites = tls.context().getDefaultSSLParameters().getCipherSuites();
            connection.setTlsProtocols(Tls.PROTOCOLS.toArray(String[]::new));
            connection.setTlsCipherSuites(suites);
            connection.setTlsNeedClientAuth(tls.mutual());
        } catch (GeneralSecurityException e) {
            throw new IOException("TLS cannot be set up: " + e.getMessage(), e);
        }
    }

    /** Presents this toolkit, PS3.7 D.3.3.2, whose entity it is that answers. */
    private static final class Answering extends AssociationHandler {

        @Override
        protected AAssociateAC makeAAssociateAC(
                Association association, AAssociateRQ request, UserIdentityAC identity)
                throws IOException {
            AAssociateAC answer = super.makeAAssociateAC(association, request, identity);
            answer.setImplClassUID(Part10.IMPLEMENTATION_CLASS);
            answer.setImplVersionName(Part10.IMPLEMENTATION_VERSION);
            return answer;
        }
    }

    Device device() {
        return device;
    }

    Connection connection() {
        return connection;
    }

    ApplicationEntity entity() {
        return entity;
    }

    @Override
    public void close() {
        threads.shutdown();
        timers.shutdownNow();
    }
}
