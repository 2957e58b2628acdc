package dev.isoline.dimse;

import dev.isoline.dicom.spi.DicomEngine;
import java.io.IOException;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.camel.CamelContext;
import org.apache.camel.Endpoint;
import org.apache.camel.ExtendedStartupListener;
import org.apache.camel.spi.annotations.Component;
import org.apache.camel.support.DefaultComponent;

/**
 * DICOM network services as a Camel component, over whichever engine {@code dev.isoline.dicom.spi}
 * finds: {@code dimse:host:port?title=…&service=…}.
 */
@Component("dimse")
public class DimseComponent extends DefaultComponent implements ExtendedStartupListener {

    private final Map<String, DimseListener> listeners = new ConcurrentHashMap<>();
    private DicomEngine engine;
    private volatile boolean fullyStarted;

    @Override
    protected Endpoint createEndpoint(String uri, String remaining, Map<String, Object> parameters)
            throws Exception {
        var configuration = new DimseConfiguration();
        configuration.address(remaining);
        var endpoint = new DimseEndpoint(uri, this, configuration);
        setProperties(configuration, parameters);
        setProperties(endpoint, parameters);
        return endpoint;
    }

    @Override
    protected void doInit() throws Exception {
        super.doInit();
        if (engine == null) {
            engine = DicomEngine.find();
        }
    }

    DicomEngine engine() {
        return engine;
    }

    /** The engine to use; by default the one that is found. */
    public void setEngine(DicomEngine engine) {
        this.engine = engine;
    }

    /** One application entity listens for all consumers of an address. */
    DimseListener listener(DimseConfiguration configuration) {
        return listeners.computeIfAbsent(
                configuration.getHost() + ":" + configuration.getPort(),
                address -> new DimseListener(this, configuration));
    }

    @Override
    public void onCamelContextStarted(CamelContext context, boolean alreadyStarted) {
        // Routes start after this.
    }

    /** The first association shall find every service, so all routes are started before. */
    @Override
    public void onCamelContextFullyStarted(CamelContext context, boolean alreadyStarted)
            throws IOException {
        fullyStarted = true;
        for (DimseListener listener : listeners.values()) {
            listener.listen();
        }
    }

    /** Whether there is anything to wait for before listening. */
    boolean isFullyStarted() {
        return fullyStarted && !getCamelContext().isStopping();
    }
}
