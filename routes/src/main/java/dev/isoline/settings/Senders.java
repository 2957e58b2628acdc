package dev.isoline.settings;

import dev.isoline.hl7v2.MessageHeader;
import dev.isoline.order.Requirement;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import org.springframework.stereotype.Component;

/** The configured sending systems, by name and by what they write into MSH-3 and MSH-4. */
@Component
public class Senders {

    /** The name of a sender nobody configured. */
    public static final String DEFAULT = "default";

    /** The name of the people who run the gateway, as an HTTP client. */
    public static final String OPERATOR = "operator";

    private final IsolineProperties properties;

    public Senders(IsolineProperties properties) {
        this.properties = properties;
    }

    /** Name of the sender of a message; {@link #DEFAULT} when none is configured for it. */
    public String nameOf(MessageHeader header) {
        return properties.senders().entrySet().stream()
                .filter(sender -> !sender.getValue().application().isEmpty())
                .filter(
                        sender ->
                                sender.getValue().application().equals(header.sendingApplication()))
                .filter(
                        sender ->
                                sender.getValue().facility().isEmpty()
                                        || sender.getValue()
                                                .facility()
                                                .equals(header.sendingFacility()))
                .map(Map.Entry::getKey)
                .findFirst()
                .orElse(DEFAULT);
    }

    public IsolineProperties.Sender byName(String name) {
        return properties.senders().getOrDefault(name, properties.defaultSender());
    }

    /** What an order of this sender must bring. */
    public Set<Requirement> required(String name) {
        var required = EnumSet.noneOf(Requirement.class);
        byName(name).required().forEach(item -> required.add(Requirement.valueOf(item)));
        return required.isEmpty() ? EnumSet.allOf(Requirement.class) : required;
    }
}
