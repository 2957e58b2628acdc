package dev.isoline.flow;

import dev.isoline.dimse.DimseEndpoint;
import dev.isoline.dimse.DimseService;
import dev.isoline.recordings.RecordingByDicom;
import dev.isoline.settings.DicomPeers;
import dev.isoline.settings.IsolineProperties;
import org.apache.camel.builder.RouteBuilder;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.stereotype.Component;

/** Flow 3, docs/flows/03-recording-in.md: a recorder station stores recordings by C-STORE. */
@Component
@ConditionalOnProperty("isoline.dicom.port")
public final class RecordingInDimseRoute extends RouteBuilder {

    public static final String ID = "recording-in-dimse";

    private final IsolineProperties properties;
    private final DimseUris uris;
    private final DicomPeers peers;
    private final RecordingByDicom recordings;

    public RecordingInDimseRoute(
            IsolineProperties properties,
            DimseUris uris,
            DicomPeers peers,
            RecordingByDicom recordings) {
        this.properties = properties;
        this.uris = uris;
        this.peers = peers;
        this.recordings = recordings;
    }

    @Override
    public void configure() {
        errorHandler(noErrorHandler()); // the engine answers a fault with 0110H
        from(uris.listening(getContext(), DimseService.STORE, options()))
                .routeId(ID)
                .bean(peers, "require(${header." + DimseEndpoint.PEER + "}, 'STORE')")
                .bean(recordings, "store(${header." + DimseEndpoint.STORE_REQUEST + "}, ${body})");
    }

    private String options() {
        return DimseUris.of(RecordingByDicom.SOP_CLASSES)
                + "&folder=RAW("
                + properties.data().resolve("recordings/incoming").toAbsolutePath()
                + ")";
    }
}
