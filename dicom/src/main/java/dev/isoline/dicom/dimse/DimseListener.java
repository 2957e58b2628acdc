package dev.isoline.dicom.dimse;

import dev.isoline.dicom.spi.AssociationObserver;
import dev.isoline.dicom.spi.Listener;
import dev.isoline.dicom.spi.Local;
import dev.isoline.dicom.spi.Role;
import dev.isoline.dicom.spi.Services;
import dev.isoline.dicom.spi.SopClass;
import dev.isoline.dicom.upper.AcceptedAssociation;
import dev.isoline.dicom.upper.AssociationHandler;
import dev.isoline.dicom.upper.PDataOutput;
import dev.isoline.dicom.upper.Server;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.util.Optional;

/** Listens for one application entity and serves its associations. */
final class DimseListener implements Listener, AssociationHandler {

    private final Local local;
    private final Services services;
    private final Server server;

    DimseListener(Local local, Services services) throws IOException {
        this.local = local;
        this.services = services;
        this.server = new Server(local, this);
    }

    @Override
    public InetSocketAddress address() {
        return server.address();
    }

    @Override
    public int associations() {
        return server.associations();
    }

    @Override
    public void close() {
        server.close();
    }

    @Override
    public AssociationObserver observer() {
        return services.observer();
    }

    @Override
    public Optional<Role> supported(String abstractSyntax) {
        if (abstractSyntax.equals(SopClass.STORAGE_COMMITMENT)) {
            return commitment();
        }
        boolean served =
                abstractSyntax.equals(SopClass.VERIFICATION) && services.verification().isPresent()
                        || services.storage().containsKey(abstractSyntax)
                        || services.find().containsKey(abstractSyntax);
        return served ? Optional.of(Role.SCU) : Optional.empty();
    }

    /** Requests come from an SCU, results of ours from an SCP. */
    private Optional<Role> commitment() {
        if (services.commitment().isPresent()) {
            return Optional.of(services.commitmentResults().isPresent() ? Role.BOTH : Role.SCU);
        }
        return services.commitmentResults().map(r -> Role.SCP);
    }

    @Override
    public void serve(AcceptedAssociation association) throws IOException {
        var output = new PDataOutput(association.layer(), association.peerMaxPdu(), local.maxPdu());
        try {
            new ScpAssociation(association, services, output).serve();
        } finally {
            output.dispose();
        }
    }
}
