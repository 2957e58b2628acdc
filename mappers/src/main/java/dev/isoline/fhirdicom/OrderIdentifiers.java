package dev.isoline.fhirdicom;

import dev.isoline.ecgdicom.OrderContext;
import dev.isoline.ecgdicom.OrderContext.Authority;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.hl7.fhir.r4.model.Identifier;

/** Identifier (FHIR R4) to a value and the authority that assigned it, PS3.3 10.14. */
final class OrderIdentifiers {

    private static final String TYPES = "http://terminology.hl7.org/CodeSystem/v2-0203";
    private static final String OID = "urn:oid:";
    private static final String LOCAL = "https://isoline.example/fhir/authority/";

    private OrderIdentifiers() {}

    /** The first identifier of a type of table v2-0203. */
    static OrderContext.Identifier ofType(String type, List<Identifier> identifiers) {
        return identifiers.stream()
                .filter(identifier -> identifier.getType().hasCoding(TYPES, type))
                .filter(Identifier::hasValue)
                .findFirst()
                .map(OrderIdentifiers::map)
                .orElse(OrderContext.Identifier.NONE);
    }

    private static OrderContext.Identifier map(Identifier identifier) {
        return new OrderContext.Identifier(identifier.getValue(), authority(identifier));
    }

    private static Authority authority(Identifier identifier) {
        String system = Objects.requireNonNullElse(identifier.getSystem(), "");
        String name = identifier.hasAssigner() ? identifier.getAssigner().getDisplay() : null;
        return authority(system, Objects.requireNonNullElse(name, ""));
    }

    private static Authority authority(String system, String name) {
        if (system.startsWith(OID)) {
            String oid = system.substring(OID.length());
            return new Authority(name.isEmpty() ? oid : name, oid, "ISO");
        }
        if (system.startsWith(LOCAL)) {
            String local = system.substring(LOCAL.length());
            return new Authority(URLDecoder.decode(local, StandardCharsets.UTF_8), "", "");
        }
        return new Authority(name, system, system.isEmpty() ? "" : "URI");
    }
}
