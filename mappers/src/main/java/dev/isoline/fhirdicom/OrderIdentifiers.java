package dev.isoline.fhirdicom;

import dev.isoline.ecgdicom.OrderContext;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.hl7.fhir.r4.model.Identifier;

/** Identifier (FHIR R4) to a value and the authority that assigned it, PS3.3 10.14. */
final class OrderIdentifiers {

    private static final String TYPES = "http://terminology.hl7.org/CodeSystem/v2-0203";

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

    /** All identifiers of these types, in their order. */
    static List<OrderContext.Identifier> ofTypes(Set<String> types, List<Identifier> identifiers) {
        return identifiers.stream()
                .filter(i -> types.stream().anyMatch(type -> i.getType().hasCoding(TYPES, type)))
                .filter(Identifier::hasValue)
                .map(OrderIdentifiers::map)
                .toList();
    }

    private static OrderContext.Identifier map(Identifier identifier) {
        String system = Objects.requireNonNullElse(identifier.getSystem(), "");
        String assigner = identifier.hasAssigner() ? identifier.getAssigner().getDisplay() : null;
        return new OrderContext.Identifier(
                identifier.getValue(),
                Authorities.of(system, Objects.requireNonNullElse(assigner, "")));
    }
}
