package dev.isoline.flow;

import dev.isoline.settings.IsolineProperties;
import dev.isoline.settings.IsolineProperties.Mllp;
import org.apache.camel.builder.RouteBuilder;
import org.springframework.stereotype.Component;

/**
 * Flow 1, docs/flows/01-order-in.md: a clinic sends an order or a patient's data over MLLP; it is
 * stored, mapped, judged and answered.
 */
@Component
public final class OrderInMllpRoute extends RouteBuilder {

    public static final String ID = "order-in-mllp";

    private final IsolineProperties properties;
    private final Hl7Reception reception;

    public OrderInMllpRoute(IsolineProperties properties, Hl7Reception reception) {
        this.properties = properties;
        this.reception = reception;
    }

    @Override
    public void configure() {
        from(endpoint(properties.mllp()))
                .routeId(ID)
                .bean(reception, "receive"); // one frame in, its answer out, after the commit
    }

    private static String endpoint(Mllp mllp) {
        return "netty:tcp://"
                + mllp.host()
                + ":"
                + mllp.port()
                + "?sync=true&disconnectOnNoReply=false&decoders=#mllpIdle,#mllpDecoder&encoders=#mllpEncoder";
    }
}
