package dev.isoline.flow;

import dev.isoline.dicom.spi.Tls;
import dev.isoline.dimse.DimseService;
import dev.isoline.settings.DicomPeers;
import dev.isoline.settings.IsolineProperties;
import dev.isoline.settings.IsolineProperties.DicomSettings;
import dev.isoline.settings.TlsBundles;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.apache.camel.CamelContext;
import org.springframework.stereotype.Component;

/** The configured application entities as endpoints of the {@code dimse} component. */
@Component
class DimseUris {

    private static final String LISTENER_TLS = "dimse-listener-tls";

    private final DicomSettings settings;
    private final DicomPeers peers;
    private final TlsBundles bundles;

    DimseUris(IsolineProperties properties, DicomPeers peers, TlsBundles bundles) {
        this.settings = properties.dicom();
        this.peers = peers;
        this.bundles = bundles;
    }

    /**
     * Our own application entity; one listener serves all of its services.
     *
     * @param options those of the service, each beginning with {@code &}
     */
    String listening(CamelContext camel, DimseService service, String options) {
        var tls = bundles.dicom(settings.tls(), settings.mutualTls());
        return ("dimse:%s:%d?service=%s&title=%s&otherTitles=%s&callers=%s&associations=%d"
                                + "&idle=%s&receivePdu=%d")
                        .formatted(
                                settings.host(),
                                settings.port(),
                                service,
                                raw(settings.aeTitle()),
                                raw(String.join(",", peers.calledTitles())),
                                raw(String.join(",", peers.callers())),
                                settings.associations(),
                                settings.idle(),
                                settings.maxPdu())
                + bound(camel, LISTENER_TLS, tls)
                + options;
    }

    /**
     * A peer to call.
     *
     * @param response how long it may be silent
     */
    String calling(CamelContext camel, String name, DimseService service, Duration response) {
        var peer = peers.byName(name);
        return "dimse:%s:%d?service=%s&title=%s&calling=%s&receivePdu=%d&sendPdu=%d&response=%s"
                        .formatted(
                                peer.host(),
                                peer.port(),
                                service,
                                raw(peer.aeTitle()),
                                raw(own(peer)),
                                settings.maxPdu(),
                                peer.maxPdu(),
                                response)
                + bound(camel, "dimse-tls-" + name, bundles.dicom(peer.tls(), false));
    }

    /** SOP classes as the option of an endpoint. */
    static String of(List<String> sopClasses) {
        return "&sopClasses=" + String.join(",", sopClasses);
    }

    private String own(IsolineProperties.Peer peer) {
        return peer.calling().isEmpty() ? settings.aeTitle() : peer.calling();
    }

    private static String bound(CamelContext camel, String name, Optional<Tls> tls) {
        tls.ifPresent(value -> camel.getRegistry().bind(name, value));
        return tls.isPresent() ? "&tls=#" + name : "";
    }

    /** A title may hold what a URI may not. */
    private static String raw(String value) {
        return "RAW(" + value + ")";
    }
}
