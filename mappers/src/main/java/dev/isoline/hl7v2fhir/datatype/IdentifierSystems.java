package dev.isoline.hl7v2fhir.datatype;

import ca.uhn.hl7v2.model.v251.datatype.HD;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/**
 * HD (HL7 v2.5.1 ch. 2.A.33) to the system of a FHIR Identifier. An assigning authority that is
 * neither a universal id nor configured gets a system of our own, so that no identifier goes
 * without.
 *
 * @param sender configured name of the sending system
 * @param defaultAuthority used where a patient identifier names no authority; empty: none
 * @param authorities system by namespace id
 */
public record IdentifierSystems(
        String sender, String defaultAuthority, Map<String, String> authorities) {

    private static final String BASE = "https://isoline.example/fhir/";

    /** Null when HD is empty. */
    public String of(HD hd) {
        return of(
                StToString.map(hd.getHd1_NamespaceID()),
                StToString.map(hd.getHd2_UniversalID()),
                StToString.map(hd.getHd3_UniversalIDType()));
    }

    /** Null when neither namespace nor universal id is given. */
    public String of(String namespace, String universalId, String universalIdType) {
        String universal = universal(universalId, universalIdType);
        if (universal != null) {
            return universal;
        }
        String name = namespace == null ? universalId : namespace;
        if (name == null) {
            return null;
        }
        String configured = authorities.get(name);
        return configured == null ? BASE + "authority/" + encoded(name) : configured;
    }

    /** HD.2 with HD.3 ISO, UUID, URI (table 0301); null for other types. */
    private static String universal(String id, String type) {
        if (id == null || type == null || id.indexOf(' ') >= 0) {
            return null;
        }
        return switch (type) {
            case "ISO" -> "urn:oid:" + id;
            case "UUID", "GUID" -> "urn:uuid:" + id.toLowerCase(java.util.Locale.ROOT);
            case "URI" -> id;
            default -> null;
        };
    }

    /** Whether the configuration names this system. */
    public boolean isConfigured(String system) {
        return system.equals(defaultAuthority) || authorities.containsValue(system);
    }

    /** System of numbers the sender gives out itself. */
    public String ofSender() {
        return BASE + "sender/" + encoded(sender);
    }

    /** System of one kind of number the sender gives out itself, such as {@code payor}. */
    public String ofSender(String kind) {
        return ofSender() + "/" + encoded(kind);
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
    }
}
