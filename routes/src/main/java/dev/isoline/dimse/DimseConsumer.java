package dev.isoline.dimse;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.spi.CommitmentResult;
import dev.isoline.dicom.spi.FindRequest;
import dev.isoline.dicom.spi.Peer;
import dev.isoline.dicom.spi.Pending;
import dev.isoline.dicom.spi.Refused;
import dev.isoline.dicom.spi.Services;
import dev.isoline.dicom.spi.Status;
import dev.isoline.dicom.spi.StorageProvider;
import dev.isoline.dicom.spi.StoreRequest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.apache.camel.Exchange;
import org.apache.camel.ExchangePattern;
import org.apache.camel.Processor;
import org.apache.camel.support.DefaultConsumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Hands what arrives to its route and answers with the {@link Status} the route leaves as the body;
 * none is success. A {@link Refused} that the route throws is answered with its status, any other
 * exception as the engine says for the service.
 */
public class DimseConsumer extends DefaultConsumer {

    private static final Logger LOG = LoggerFactory.getLogger(DimseConsumer.class);

    private final DimseEndpoint endpoint;

    DimseConsumer(DimseEndpoint endpoint, Processor processor) {
        super(endpoint, processor);
        this.endpoint = endpoint;
    }

    @Override
    protected void doStart() throws Exception {
        super.doStart();
        listener().add(this);
    }

    @Override
    protected void doStop() throws Exception {
        listener().remove(this);
        super.doStop();
    }

    private DimseListener listener() {
        return endpoint.getComponent().listener(endpoint.getConfiguration());
    }

    /** Adds this consumer's service to what its application entity serves. */
    Services offer(Services services) {
        var configuration = endpoint.getConfiguration();
        return switch (configuration.getService()) {
            case ECHO -> verifying(services);
            case STORE -> services.storing(configuration.sopClassList(), new Storage());
            case FIND -> {
                var all = services;
                for (String sopClass : configuration.sopClassList()) {
                    all = all.finding(sopClass, this::find);
                }
                yield all;
            }
            case COMMITMENT -> services.takingResults(this::result);
        };
    }

    private Services verifying(Services services) {
        return new Services(
                Optional.of(peer -> answer(null, Map.of(DimseEndpoint.PEER, peer))),
                services.storage(),
                services.find(),
                services.commitment(),
                services.commitmentResults(),
                services.observer());
    }

    private Status find(FindRequest request, Pending pending) throws IOException {
        return answer(
                request,
                Map.of(DimseEndpoint.PEER, request.peer(), DimseEndpoint.PENDING, pending));
    }

    private Status result(Peer peer, CommitmentResult result) throws IOException {
        return answer(result, Map.of(DimseEndpoint.PEER, peer));
    }

    private Status answer(Object body, Map<String, Object> headers) throws IOException {
        Exchange exchange = createExchange(false);
        try {
            exchange.setPattern(ExchangePattern.InOut);
            exchange.getIn().setBody(body);
            exchange.getIn().setHeaders(headers);
            process(exchange);
            return status(exchange);
        } finally {
            releaseExchange(exchange, false);
        }
    }

    private void process(Exchange exchange) {
        try {
            getProcessor().process(exchange);
        } catch (Exception e) {
            exchange.setException(e);
        }
    }

    private static Status status(Exchange exchange) throws IOException {
        if (exchange.getException() != null) {
            throw failure(exchange.getException());
        }
        return exchange.getMessage().getBody() instanceof Status status ? status : Status.SUCCESS;
    }

    /** The message of an unforeseen fault may quote a patient, so only its place is told. */
    private static IOException failure(Exception e) {
        if (e instanceof Refused refused) {
            return refused;
        }
        LOG.error(
                "A DICOM request could not be answered: {} at {}",
                e.getClass().getName(),
                Arrays.stream(e.getStackTrace()).limit(8).toList());
        return new IOException("fault in the route: " + e.getClass().getName());
    }

    /** Objects come to rest in the endpoint's folder before the route sees them. */
    private final class Storage implements StorageProvider {

        @Override
        public Path file(StoreRequest request) throws IOException {
            Path folder = Path.of(endpoint.getConfiguration().getFolder());
            return Files.createDirectories(folder).resolve(UUID.randomUUID() + ".part");
        }

        @Override
        public Status stored(StoreRequest request, Path file, DataSet head) throws IOException {
            try {
                return answer(
                        file,
                        Map.of(
                                DimseEndpoint.PEER,
                                request.peer(),
                                DimseEndpoint.STORE_REQUEST,
                                request));
            } finally {
                // A route that keeps the object has moved it.
                Files.deleteIfExists(file);
            }
        }
    }
}
