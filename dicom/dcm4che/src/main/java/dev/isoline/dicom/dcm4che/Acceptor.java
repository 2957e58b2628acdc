package dev.isoline.dicom.dcm4che;

import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.spi.Admission;
import dev.isoline.dicom.spi.AeTitle;
import dev.isoline.dicom.spi.Listener;
import dev.isoline.dicom.spi.Local;
import dev.isoline.dicom.spi.Services;
import dev.isoline.dicom.spi.SopClass;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.security.GeneralSecurityException;
import java.util.Arrays;
import java.util.Set;
import org.dcm4che3.net.Association;
import org.dcm4che3.net.DimseRQHandler;
import org.dcm4che3.net.TransferCapability;
import org.dcm4che3.net.service.DicomServiceRegistry;

/** Listens for associations, PS3.8 7.1. */
final class Acceptor implements Listener {

    private static final String ANY = "*";
    private static final String[] SYNTAXES = {
        TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN.uid(),
        TransferSyntax.IMPLICIT_VR_LITTLE_ENDIAN.uid()
    };

    private final Node node;
    private final InetSocketAddress address;
    private final DicomServiceRegistry registry = new DicomServiceRegistry();

    Acceptor(Local local, Services services) throws IOException {
        Admission admission = local.admission();
        String title = admission.anyCalled() ? ANY : local.title().value();
        node = new Node(title, local.maxPdu(), local.timeouts(), local.tls());
        try {
            admit(admission);
            serve(services);
            node.device().setDimseRQHandler(registry);
            node.device().setAssociationMonitor(new Observed(services.observer()));
            address = bind(local);
        } catch (IOException | RuntimeException e) {
            node.close();
            throw e;
        }
    }

    private void admit(Admission admission) {
        node.entity().setAcceptedCallingAETitles(values(admission.callers()));
        node.entity().setOtherAETitles(values(admission.called()));
        node.device().setLimitOpenAssociations(admission.associations());
    }

    private static String[] values(Set<AeTitle> titles) {
        return titles.stream().map(AeTitle::value).toArray(String[]::new);
    }

    private void serve(Services services) {
        services.verification()
                .ifPresent(p -> scp(SopClass.VERIFICATION, new VerificationService(p)));
        services.storage().forEach((sopClass, p) -> scp(sopClass, new StorageService(p)));
        services.find().forEach((sopClass, p) -> scp(sopClass, new FindService(p)));
        var commitment = new CommitmentService(services);
        if (services.commitment().isPresent()) {
            scp(SopClass.STORAGE_COMMITMENT, commitment);
        }
        if (services.commitmentResults().isPresent()) {
            capability(SopClass.STORAGE_COMMITMENT, TransferCapability.Role.SCU);
            registry.addDimseRQHandler(commitment, SopClass.STORAGE_COMMITMENT);
        }
    }

    private void scp(String sopClass, DimseRQHandler service) {
        capability(sopClass, TransferCapability.Role.SCP);
        registry.addDimseRQHandler(service, sopClass);
    }

    private void capability(String sopClass, TransferCapability.Role role) {
        node.entity().addTransferCapability(new TransferCapability(null, sopClass, role, SYNTAXES));
    }

    /** dcm4che does not listen on port 0, so a free one is looked for. */
    private InetSocketAddress bind(Local local) throws IOException {
        InetAddress host = InetAddress.getByName(local.host());
        int port = local.port();
        if (port == 0) {
            try (var free = new ServerSocket(0, 1, host)) {
                port = free.getLocalPort();
            }
        }
        node.connection().setHostname(host.getHostAddress());
        node.connection().setPort(port);
        try {
            node.connection().bind();
        } catch (GeneralSecurityException e) {
            throw new IOException("TLS cannot be set up: " + e.getMessage(), e);
        }
        return new InetSocketAddress(host, port);
    }

    @Override
    public InetSocketAddress address() {
        return address;
    }

    @Override
    public int associations() {
        return node.device().getNumberOfOpenAssociations();
    }

    @Override
    public void close() {
        node.connection().unbind();
        Arrays.stream(node.device().listOpenAssociations()).forEach(Association::abort);
        try {
            node.device().waitForNoOpenConnections();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        node.close();
    }
}
