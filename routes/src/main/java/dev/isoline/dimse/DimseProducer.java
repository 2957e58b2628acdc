package dev.isoline.dimse;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.spi.AeTitle;
import dev.isoline.dicom.spi.Association;
import dev.isoline.dicom.spi.CommitmentRequest;
import dev.isoline.dicom.spi.CommitmentResults;
import dev.isoline.dicom.spi.MaxPdu;
import dev.isoline.dicom.spi.Offer;
import dev.isoline.dicom.spi.Remote;
import dev.isoline.dicom.spi.Status;
import dev.isoline.dicom.spi.Timeouts;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.camel.Exchange;
import org.apache.camel.Message;
import org.apache.camel.support.DefaultProducer;

/**
 * Calls another application entity, one association a message. The body becomes the {@link Status}
 * it answered; of FIND, the list of matches when it is success.
 *
 * <p>Bodies: ECHO none; STORE the {@link Path} of a PS3.10 file, with its SOP class as a header;
 * FIND the {@link DataSet} of keys; COMMITMENT a {@link CommitmentRequest}.
 */
public class DimseProducer extends DefaultProducer {

    private final DimseEndpoint endpoint;
    private final Set<Association> open = ConcurrentHashMap.newKeySet();

    DimseProducer(DimseEndpoint endpoint) {
        super(endpoint);
        this.endpoint = endpoint;
    }

    @Override
    public void process(Exchange exchange) throws Exception {
        Message message = exchange.getMessage();
        try (Association association = associate(message)) {
            open.add(association);
            try {
                message.setBody(call(association, message));
            } finally {
                open.remove(association);
            }
        }
    }

    private Object call(Association association, Message message) throws Exception {
        return switch (configuration().getService()) {
            case ECHO -> association.echo();
            case STORE -> association.store(message.getMandatoryBody(Path.class));
            case FIND -> find(association, message.getMandatoryBody(DataSet.class));
            case COMMITMENT ->
                    commit(association, message.getMandatoryBody(CommitmentRequest.class));
        };
    }

    private Object find(Association association, DataSet keys) throws IOException {
        List<DataSet> matches = new ArrayList<>();
        Status end =
                association.find(
                        configuration().sopClassList().get(0),
                        keys,
                        (match, status) -> matches.add(match));
        return end.isSuccess() ? matches : end;
    }

    private Status commit(Association association, CommitmentRequest request) throws IOException {
        Status status = association.requestCommitment(request);
        if (status.isSuccess() && !configuration().getLinger().isZero()) {
            association.awaitCommitment(configuration().getLinger());
        }
        return status;
    }

    private Association associate(Message message) throws IOException {
        var engine = endpoint.getComponent().engine();
        CommitmentResults results =
                message.getHeader(DimseEndpoint.RESULTS, CommitmentResults.class);
        return results == null
                ? engine.associate(remote(), offer(message))
                : engine.associate(remote(), offer(message), results);
    }

    private Offer offer(Message message) {
        return switch (configuration().getService()) {
            case ECHO -> Offer.verification();
            case STORE -> Offer.storage(List.of(sopClass(message)));
            case FIND -> Offer.worklist();
            case COMMITMENT -> Offer.commitment();
        };
    }

    private static String sopClass(Message message) {
        return message.getHeader(DimseEndpoint.SOP_CLASS, String.class);
    }

    private Remote remote() {
        var configuration = configuration();
        var usual = Timeouts.DEFAULT;
        return new Remote(
                configuration.getHost(),
                configuration.getPort(),
                configuration.at(),
                new AeTitle(configuration.getCalling()),
                new MaxPdu(configuration.getReceivePdu(), configuration.getSendPdu()),
                new Timeouts(
                        usual.connect(),
                        usual.artim(),
                        usual.associate(),
                        configuration.getResponse(),
                        configuration.getIdle(),
                        usual.release()),
                configuration.security());
    }

    private DimseConfiguration configuration() {
        return endpoint.getConfiguration();
    }

    /** What is under way would otherwise hold up the end. */
    @Override
    protected void doStop() throws Exception {
        open.forEach(Association::abort);
        super.doStop();
    }
}
