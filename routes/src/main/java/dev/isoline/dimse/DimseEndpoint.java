package dev.isoline.dimse;

import org.apache.camel.Consumer;
import org.apache.camel.Processor;
import org.apache.camel.Producer;
import org.apache.camel.spi.UriEndpoint;
import org.apache.camel.spi.UriParam;
import org.apache.camel.support.DefaultEndpoint;

/** One service of one application entity: of ours for a consumer, of another for a producer. */
@UriEndpoint(
        firstVersion = "0.2.0",
        scheme = "dimse",
        title = "DIMSE",
        syntax = "dimse:host:port",
        remote = true)
public class DimseEndpoint extends DefaultEndpoint {

    /** Consumer: the {@code Peer} that asks. */
    public static final String PEER = "CamelDimsePeer";

    /** Consumer of STORE: the {@code StoreRequest} the object came with. */
    public static final String STORE_REQUEST = "CamelDimseStoreRequest";

    /** Consumer of FIND: the {@code Pending} that matches are sent through. */
    public static final String PENDING = "CamelDimsePending";

    /** Producer of STORE: SOP Class UID of the object. */
    public static final String SOP_CLASS = "CamelDimseSopClass";

    /** Producer of COMMITMENT: the {@code CommitmentResults} that take what comes at once. */
    public static final String RESULTS = "CamelDimseResults";

    @UriParam private final DimseConfiguration configuration;

    DimseEndpoint(String uri, DimseComponent component, DimseConfiguration configuration) {
        super(uri, component);
        this.configuration = configuration;
    }

    public DimseConfiguration getConfiguration() {
        return configuration;
    }

    @Override
    public DimseComponent getComponent() {
        return (DimseComponent) super.getComponent();
    }

    @Override
    public Producer createProducer() {
        return new DimseProducer(this);
    }

    @Override
    public Consumer createConsumer(Processor processor) throws Exception {
        var consumer = new DimseConsumer(this, processor);
        configureConsumer(consumer);
        return consumer;
    }
}
