package dev.isoline.flow;

import dev.isoline.delivery.ArchiveLine;
import dev.isoline.delivery.ArchiveLines;
import dev.isoline.dicom.spi.CommitmentRequest;
import dev.isoline.dicom.spi.CommitmentResults;
import dev.isoline.dicom.spi.Status;
import dev.isoline.dimse.DimseEndpoint;
import dev.isoline.dimse.DimseService;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import org.apache.camel.Exchange;
import org.apache.camel.ProducerTemplate;
import org.springframework.stereotype.Component;

/** Hands what the outbox sends to archives over to {@link ResultOutDimseRoute}. */
@Component
class ArchiveCalls implements ArchiveLines {

    private final ProducerTemplate template;

    ArchiveCalls(ProducerTemplate template) {
        this.template = template;
    }

    @Override
    public ArchiveLine to(String destination) {
        return new ArchiveLine() {

            @Override
            public Status store(Path file, String sopClass) throws IOException {
                return call(
                        ResultOutDimseRoute.entry(DimseService.STORE, destination),
                        file,
                        Map.of(DimseEndpoint.SOP_CLASS, sopClass));
            }

            @Override
            public Status requestCommitment(CommitmentRequest request, CommitmentResults results)
                    throws IOException {
                return call(
                        ResultOutDimseRoute.entry(DimseService.COMMITMENT, destination),
                        request,
                        Map.of(DimseEndpoint.RESULTS, results));
            }
        };
    }

    private Status call(String entry, Object body, Map<String, Object> headers) throws IOException {
        Exchange exchange =
                template.request(
                        entry,
                        outgoing -> {
                            outgoing.getMessage().setBody(body);
                            outgoing.getMessage().setHeaders(headers);
                        });
        if (exchange.getException() instanceof IOException failure) {
            throw failure;
        }
        if (exchange.getException() != null) {
            throw new IOException(exchange.getException());
        }
        return exchange.getMessage().getBody(Status.class);
    }
}
