package dev.isoline.flow;

import dev.isoline.dicom.spi.FindProvider;
import dev.isoline.dicom.spi.SopClass;
import dev.isoline.dimse.DimseEndpoint;
import dev.isoline.dimse.DimseService;
import dev.isoline.settings.DicomPeers;
import java.util.List;
import org.apache.camel.builder.RouteBuilder;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.stereotype.Component;

/** Flow 5, docs/flows/05-worklist.md: a recorder station asks which orders wait for it. */
@Component
@ConditionalOnProperty("isoline.dicom.port")
public final class WorklistDimseRoute extends RouteBuilder {

    public static final String ID = "worklist-dimse";

    private static final String QUERY = DimseUris.of(List.of(SopClass.MODALITY_WORKLIST_FIND));

    private final DimseUris uris;
    private final DicomPeers peers;
    private final FindProvider worklist;

    public WorklistDimseRoute(DimseUris uris, DicomPeers peers, FindProvider worklist) {
        this.uris = uris;
        this.peers = peers;
        this.worklist = worklist;
    }

    @Override
    public void configure() {
        errorHandler(noErrorHandler()); // the engine answers a fault with C001H
        from(uris.listening(getContext(), DimseService.FIND, QUERY))
                .routeId(ID)
                .bean(peers, "require(${header." + DimseEndpoint.PEER + "}, 'WORKLIST')")
                .bean(worklist, "find(${body}, ${header." + DimseEndpoint.PENDING + "})");
    }
}
