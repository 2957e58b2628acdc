package dev.isoline.dimse;

import dev.isoline.dicom.spi.Listener;
import dev.isoline.dicom.spi.Local;
import dev.isoline.dicom.spi.MaxPdu;
import dev.isoline.dicom.spi.Services;
import dev.isoline.dicom.spi.Timeouts;
import java.io.IOException;
import java.util.LinkedHashSet;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One application entity of ours. It listens once all routes are started, so that the first
 * association finds every service; a route that comes or goes later has it listen anew.
 */
final class DimseListener {

    private static final Logger LOG = LoggerFactory.getLogger(DimseListener.class);

    private final DimseComponent component;
    private final DimseConfiguration configuration;
    private final Set<DimseConsumer> consumers = new LinkedHashSet<>();
    private Listener listener;

    DimseListener(DimseComponent component, DimseConfiguration configuration) {
        this.component = component;
        this.configuration = configuration;
    }

    synchronized void add(DimseConsumer consumer) throws IOException {
        consumers.add(consumer);
        listen();
    }

    synchronized void remove(DimseConsumer consumer) throws IOException {
        consumers.remove(consumer);
        listen();
    }

    /** Anew, with the services there are now; not before all routes are started. */
    synchronized void listen() throws IOException {
        if (listener != null) {
            listener.close();
            listener = null;
        }
        if (component.isFullyStarted() && !consumers.isEmpty()) {
            listener = component.engine().listen(local(), services());
            LOG.info("DICOM: {} listens on {}", configuration.getTitle(), listener.address());
        }
    }

    private Services services() {
        var services = Services.echoing().observedBy(new AssociationLog());
        for (DimseConsumer consumer : consumers) {
            services = consumer.offer(services);
        }
        return services;
    }

    private Local local() {
        return new Local(
                configuration.at(),
                configuration.getHost(),
                configuration.getPort(),
                configuration.admission(),
                new MaxPdu(configuration.getReceivePdu(), configuration.getSendPdu()),
                timeouts(),
                configuration.security());
    }

    private Timeouts timeouts() {
        var usual = Timeouts.DEFAULT;
        return new Timeouts(
                usual.connect(),
                usual.artim(),
                usual.associate(),
                configuration.getResponse(),
                configuration.getIdle(),
                usual.release());
    }
}
