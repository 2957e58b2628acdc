package dev.isoline.flow;

import dev.isoline.dimse.DimseService;
import dev.isoline.settings.IsolineProperties;
import dev.isoline.settings.IsolineProperties.Destination;
import java.time.Duration;
import java.util.Locale;
import org.apache.camel.builder.RouteBuilder;
import org.springframework.stereotype.Component;

/**
 * Flow 4, docs/flows/04-result-out.md: objects go to archives by C-STORE, and archives are asked to
 * commit themselves to them. The outbox decides what goes when; these are its lines.
 */
@Component
public final class ResultOutDimseRoute extends RouteBuilder {

    public static final String ID = "result-out-dimse";

    private final IsolineProperties properties;
    private final DimseUris uris;

    public ResultOutDimseRoute(IsolineProperties properties, DimseUris uris) {
        this.properties = properties;
        this.uris = uris;
    }

    /** Where the outbox hands over what is due to a destination. */
    static String entry(DimseService service, String destination) {
        return "direct:" + id(service, destination);
    }

    @Override
    public void configure() {
        errorHandler(noErrorHandler()); // the outbox judges what went wrong, and tries again
        properties.destinations().entrySet().stream()
                .filter(destination -> destination.getValue().kind().equals("archive"))
                .forEach(destination -> lines(destination.getKey(), destination.getValue()));
    }

    private void lines(String name, Destination settings) {
        line(DimseService.STORE, name, settings, "");
        line(DimseService.COMMITMENT, name, settings, "&linger=" + settings.commitment().linger());
    }

    private void line(DimseService service, String name, Destination settings, String options) {
        from(entry(service, name))
                .routeId(id(service, name))
                .to(
                        uris.calling(getContext(), settings.peer(), service, timeout(settings))
                                + options);
    }

    private Duration timeout(Destination settings) {
        return settings.timeout() == null ? properties.delivery().timeout() : settings.timeout();
    }

    private static String id(DimseService service, String destination) {
        return ID + "-" + service.name().toLowerCase(Locale.ROOT) + "-" + destination;
    }
}
