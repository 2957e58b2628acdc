package dev.isoline.delivery;

import static dev.isoline.settings.IsolineProperties.PeerMay.COMMIT;

import dev.isoline.settings.IsolineProperties;
import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import javax.net.ssl.SSLContext;
import org.springframework.boot.ssl.NoSuchSslBundleException;
import org.springframework.boot.ssl.SslBundles;

/** The configured destinations, ready to be sent to. */
public final class Destinations {

    private final IsolineProperties properties;
    private final SslBundles bundles;

    private final ArchiveLines lines;
    private final Commitments commitments;

    private Destinations(
            IsolineProperties properties,
            SslBundles bundles,
            ArchiveLines lines,
            Commitments commitments) {
        this.properties = properties;
        this.bundles = bundles;
        this.lines = lines;
        this.commitments = commitments;
    }

    /**
     * @param bundles the keys and certificates settings refer to
     * @param lines the ways to archives
     * @throws IllegalArgumentException names the setting at fault
     */
    public static Map<String, Destination> of(
            IsolineProperties properties,
            SslBundles bundles,
            ArchiveLines lines,
            Commitments commitments) {
        var built = new Destinations(properties, bundles, lines, commitments);
        var destinations = new LinkedHashMap<String, Destination>();
        properties
                .destinations()
                .forEach(
                        (name, settings) -> {
                            destinations.put(name, built.of(name, settings));
                            if (settings.commitment().required()) {
                                destinations.put(
                                        CommitmentLane.of(name), built.commitment(name, settings));
                            }
                        });
        return destinations;
    }

    private Destination of(String name, IsolineProperties.Destination settings) {
        return switch (settings.kind()) {
            case "fhir" -> fhir(name, settings);
            case "mllp" -> mllp(name, settings);
            case "folder" -> new FolderDestination(Path.of(settings.url()), properties.data());
            case "stow" -> stow(name, settings);
            case "archive" -> archive(name, settings);
            default -> throw wrong(name, "kind", "fhir, mllp, folder, stow or archive");
        };
    }

    private Destination archive(String name, IsolineProperties.Destination settings) {
        title(name, settings);
        return new ArchiveDestination(
                lines.to(name), settings.commitment().required(), properties.data());
    }

    /** An archive may report on an association of its own, PS3.4 J.3.3. */
    private Destination commitment(String name, IsolineProperties.Destination settings) {
        String title = title(name, settings);
        if (properties.dicom().port() == null
                || !properties.dicom().peers().get(settings.peer()).may().contains(COMMIT)) {
            throw wrong(
                    name,
                    "commitment.required",
                    "false where its reports cannot come in: set isoline.dicom.port, and let the"
                            + " peer COMMIT (isoline.dicom.peers."
                            + settings.peer()
                            + ".may)");
        }
        return new CommitmentDestination(
                name, title, lines.to(name), settings.commitment().within(), commitments);
    }

    private String title(String name, IsolineProperties.Destination settings) {
        var peer = properties.dicom().peers().get(settings.peer());
        if (peer == null || peer.host().isEmpty()) {
            throw wrong(name, "peer", "the name of one of isoline.dicom.peers that has a host");
        }
        return peer.aeTitle();
    }

    private Destination fhir(String name, IsolineProperties.Destination settings) {
        URI url = http(name, settings);
        return new FhirDestination(
                withoutUser(url),
                authorization(url, settings.token()),
                timeout(settings),
                tls(name, settings));
    }

    private Destination stow(String name, IsolineProperties.Destination settings) {
        URI url = http(name, settings);
        return new StowDestination(
                withoutUser(url),
                authorization(url, settings.token()),
                timeout(settings),
                tls(name, settings),
                properties.data());
    }

    private Duration timeout(IsolineProperties.Destination settings) {
        return settings.timeout() == null ? properties.delivery().timeout() : settings.timeout();
    }

    private Optional<SSLContext> tls(String name, IsolineProperties.Destination settings) {
        if (settings.tls().isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(bundles.getBundle(settings.tls()).createSslContext());
        } catch (NoSuchSslBundleException e) {
            throw wrong(name, "tls", "the name of a spring.ssl.bundle");
        }
    }

    private static String authorization(URI url, String token) {
        if (!token.isEmpty()) {
            return FhirDestination.bearer(token);
        }
        return url.getUserInfo() == null ? "" : FhirDestination.basic(url.getUserInfo());
    }

    private Destination mllp(String name, IsolineProperties.Destination settings) {
        URI url = url(name, settings);
        if (!"mllp".equals(url.getScheme()) || url.getHost() == null || url.getPort() < 0) {
            throw wrong(name, "url", "mllp://host:port");
        }
        return new MllpDestination(url.getHost(), url.getPort(), timeout(settings));
    }

    private static URI http(String name, IsolineProperties.Destination settings) {
        URI url = url(name, settings);
        if (url.getHost() == null || !url.getScheme().matches("https?")) {
            throw wrong(name, "url", "http://host/path or https://host/path");
        }
        return url;
    }

    private static URI url(String name, IsolineProperties.Destination settings) {
        try {
            return URI.create(settings.url());
        } catch (IllegalArgumentException e) {
            throw wrong(name, "url", "a URL");
        }
    }

    private static URI withoutUser(URI url) {
        String user = url.getRawUserInfo();
        return user == null ? url : URI.create(url.toString().replace(user + "@", ""));
    }

    private static IllegalArgumentException wrong(String name, String setting, String expected) {
        return new IllegalArgumentException(
                "isoline.destinations.%s.%s must be %s".formatted(name, setting, expected));
    }
}
