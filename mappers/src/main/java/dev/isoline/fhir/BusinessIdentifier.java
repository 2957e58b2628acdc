package dev.isoline.fhir;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Property;
import org.hl7.fhir.r4.model.Resource;

/** The identifier by which a receiver recognises a resource it may have got before. */
public final class BusinessIdentifier {

    /** Which of several identifiers speaks for the resource, v2-0203; the first listed wins. */
    private static final List<String> PREFERRED = List.of("PLAC", "MR", "FILL");

    private BusinessIdentifier() {}

    /** The preferred identifier that has a system and a value; empty when there is none. */
    public static Optional<Identifier> find(Resource resource) {
        List<Identifier> usable = usable(resource);
        return PREFERRED.stream()
                .flatMap(code -> usable.stream().filter(i -> hasType(i, code)))
                .findFirst()
                .or(() -> usable.stream().findFirst());
    }

    /** Every identifier that has a system and a value. */
    public static List<Identifier> usable(Resource resource) {
        return all(resource).filter(i -> i.hasSystem() && i.hasValue()).toList();
    }

    /** Whether the identifier is of this type of {@link Systems#IDENTIFIER_TYPE}. */
    public static boolean hasType(Identifier identifier, String code) {
        return identifier.getType().hasCoding(Systems.IDENTIFIER_TYPE, code);
    }

    /**
     * The search that finds the resource at its receiver; its own id as a URN, where it carries
     * that, before the numbers it shares with the order it belongs to. One without a business
     * identifier is given its own id for one, as a URN; a type that has no identifiers is given a
     * tag instead.
     */
    static String query(Resource resource, String urn) {
        Property identifier = resource.getNamedProperty("identifier");
        if (identifier == null) {
            resource.getMeta().addTag(Systems.RESOURCE_TAG, urn, null);
            return "_tag=" + token(Systems.RESOURCE_TAG, urn);
        }
        Identifier found =
                all(resource)
                        .filter(i -> Systems.URI.equals(i.getSystem()) && urn.equals(i.getValue()))
                        .findFirst()
                        .or(() -> find(resource))
                        .orElseGet(() -> give(resource, urn));
        return "identifier=" + token(found.getSystem(), found.getValue());
    }

    private static Identifier give(Resource resource, String urn) {
        var identifier = new Identifier().setSystem(Systems.URI).setValue(urn);
        resource.setProperty("identifier", identifier);
        return identifier;
    }

    private static Stream<Identifier> all(Resource resource) {
        Property property = resource.getNamedProperty("identifier");
        return property == null
                ? Stream.empty()
                : property.getValues().stream().map(Identifier.class::cast);
    }

    /** FHIR R4 search.html#token: system|value, percent-encoded as it stands in a URL. */
    private static String token(String system, String value) {
        return encode(system) + "%7C" + encode(value);
    }

    /** Search parameters escape comma, dollar and bar with a backslash (search.html#escaping). */
    private static String encode(String text) {
        String escaped = text.replaceAll("([\\\\,$|])", "\\\\$1");
        return URLEncoder.encode(escaped, StandardCharsets.UTF_8).replace("+", "%20");
    }
}
