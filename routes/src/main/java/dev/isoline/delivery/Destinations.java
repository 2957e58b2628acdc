package dev.isoline.delivery;

import dev.isoline.settings.IsolineProperties;
import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;

/** The configured destinations, ready to be sent to. */
public final class Destinations {

    private Destinations() {}

    /**
     * @throws IllegalArgumentException names the setting at fault
     */
    public static Map<String, Destination> of(IsolineProperties properties) {
        var destinations = new LinkedHashMap<String, Destination>();
        Duration timeout = properties.delivery().timeout();
        properties
                .destinations()
                .forEach(
                        (name, settings) ->
                                destinations.put(
                                        name, of(name, settings, timeout, properties.data())));
        return destinations;
    }

    private static Destination of(
            String name, IsolineProperties.Destination settings, Duration timeout, Path dataDir) {
        return switch (settings.kind()) {
            case "fhir" -> fhir(name, settings, timeout);
            case "mllp" -> mllp(name, settings, timeout);
            case "folder" -> new FolderDestination(Path.of(settings.url()), dataDir);
            default -> throw wrong(name, "kind", "fhir, mllp or folder");
        };
    }

    private static Destination fhir(
            String name, IsolineProperties.Destination settings, Duration timeout) {
        URI url = url(name, settings);
        if (url.getHost() == null || !url.getScheme().matches("https?")) {
            throw wrong(name, "url", "http://host/path or https://host/path");
        }
        return new FhirDestination(withoutUser(url), authorization(url, settings.token()), timeout);
    }

    private static String authorization(URI url, String token) {
        if (!token.isEmpty()) {
            return FhirDestination.bearer(token);
        }
        return url.getUserInfo() == null ? "" : FhirDestination.basic(url.getUserInfo());
    }

    private static Destination mllp(
            String name, IsolineProperties.Destination settings, Duration timeout) {
        URI url = url(name, settings);
        if (!"mllp".equals(url.getScheme()) || url.getHost() == null || url.getPort() < 0) {
            throw wrong(name, "url", "mllp://host:port");
        }
        return new MllpDestination(url.getHost(), url.getPort(), timeout);
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
