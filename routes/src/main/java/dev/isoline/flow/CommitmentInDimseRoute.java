package dev.isoline.flow;

import dev.isoline.delivery.Commitments;
import dev.isoline.dimse.DimseEndpoint;
import dev.isoline.dimse.DimseService;
import dev.isoline.settings.DicomPeers;
import org.apache.camel.builder.RouteBuilder;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.stereotype.Component;

/**
 * Flow 4, docs/flows/04-result-out.md: an archive reports, on an association of its own, what it
 * has committed itself to.
 */
@Component
@ConditionalOnProperty("isoline.dicom.port")
public final class CommitmentInDimseRoute extends RouteBuilder {

    public static final String ID = "commitment-in-dimse";

    private final DimseUris uris;
    private final DicomPeers peers;
    private final Commitments commitments;

    public CommitmentInDimseRoute(DimseUris uris, DicomPeers peers, Commitments commitments) {
        this.uris = uris;
        this.peers = peers;
        this.commitments = commitments;
    }

    @Override
    public void configure() {
        errorHandler(noErrorHandler()); // the engine answers a fault with 0110H
        from(uris.listening(getContext(), DimseService.COMMITMENT, ""))
                .routeId(ID)
                .bean(peers, "require(${header." + DimseEndpoint.PEER + "}, 'COMMIT')")
                .bean(commitments, "report(${header." + DimseEndpoint.PEER + "}, ${body})");
    }
}
