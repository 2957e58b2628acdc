package dev.isoline.fhirdicom;

import dev.isoline.ecgdicom.OrderContext.Authority;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;

/** Identifier.system (FHIR R4) to the authority that assigned the identifier, PS3.3 10.14. */
public final class Authorities {

    private static final String OID = "urn:oid:";
    private static final String LOCAL = "https://isoline.example/fhir/authority/";

    private Authorities() {}

    /**
     * @param system of the identifier, empty when it has none
     * @param assigner name of the organisation that assigned it, empty when unknown
     */
    public static Authority of(String system, String assigner) {
        if (system.startsWith(OID)) {
            String oid = system.substring(OID.length());
            return new Authority(assigner.isEmpty() ? oid : assigner, oid, "ISO");
        }
        if (system.startsWith(LOCAL)) {
            String local = system.substring(LOCAL.length());
            return new Authority(URLDecoder.decode(local, StandardCharsets.UTF_8), "", "");
        }
        return new Authority(assigner, system, system.isEmpty() ? "" : "URI");
    }
}
