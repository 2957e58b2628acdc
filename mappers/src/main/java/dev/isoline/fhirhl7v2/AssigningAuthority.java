package dev.isoline.fhirhl7v2;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/**
 * The system of a FHIR identifier as HD (HL7 v2.5.1 ch. 2.A.33); undoes what {@code
 * dev.isoline.hl7v2fhir.datatype.IdentifierSystems} does.
 *
 * @param universalIdType HL7 table 0301
 */
record AssigningAuthority(String namespace, String universalId, String universalIdType) {

    private static final String OURS = "https://isoline.example/fhir/";
    private static final String AUTHORITY = OURS + "authority/";
    private static final String SENDER = OURS + "sender/";
    private static final String NPI = "http://hl7.org/fhir/sid/us-npi";

    static AssigningAuthority of(String system, Map<String, String> authorities) {
        String namespace =
                authorities.entrySet().stream()
                        .filter(entry -> entry.getValue().equals(system))
                        .map(Map.Entry::getKey)
                        .sorted()
                        .findFirst()
                        .orElse("");
        return system == null ? none() : of(system, namespace);
    }

    private static AssigningAuthority of(String system, String namespace) {
        if (system.startsWith("urn:oid:")) {
            return new AssigningAuthority(namespace, system.substring("urn:oid:".length()), "ISO");
        }
        if (system.startsWith("urn:uuid:")) {
            return new AssigningAuthority(
                    namespace, system.substring("urn:uuid:".length()), "UUID");
        }
        if (!namespace.isEmpty()) {
            return new AssigningAuthority(namespace, "", "");
        }
        return ofUri(system);
    }

    private static AssigningAuthority ofUri(String system) {
        if (system.startsWith(AUTHORITY)) {
            String name = system.substring(AUTHORITY.length());
            return new AssigningAuthority(URLDecoder.decode(name, StandardCharsets.UTF_8), "", "");
        }
        if (system.startsWith(SENDER)) {
            return none(); // it came without an authority, so it goes back without one
        }
        if (system.startsWith(OURS)) {
            return new AssigningAuthority("ISOLINE", "", "");
        }
        return system.equals(NPI)
                ? new AssigningAuthority("NPI", "2.16.840.1.113883.4.6", "ISO")
                : new AssigningAuthority("", system, "URI");
    }

    private static AssigningAuthority none() {
        return new AssigningAuthority("", "", "");
    }
}
