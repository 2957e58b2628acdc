package dev.isoline.hl7v2fhir.table;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * HL7 table 0396, coding systems, to the system of a FHIR Coding. The published rows name no
 * targets for it; the URIs are those of the FHIR R4 terminologies page (from memory), CPT4 and CPT
 * are common practice for C4.
 */
public final class Table0396 {

    // spotless:off
    private static final Map<String, String> ROWS =
            Map.ofEntries(
                    Map.entry("LN",    "http://loinc.org"),
                    Map.entry("SCT",   "http://snomed.info/sct"),
                    Map.entry("I10C",  "http://hl7.org/fhir/sid/icd-10-cm"),
                    Map.entry("I10",   "http://hl7.org/fhir/sid/icd-10"),
                    Map.entry("I9C",   "http://hl7.org/fhir/sid/icd-9-cm"),
                    Map.entry("I9",    "http://hl7.org/fhir/sid/icd-9-cm"),
                    Map.entry("C4",    "http://www.ama-assn.org/go/cpt"),
                    Map.entry("CPT4",  "http://www.ama-assn.org/go/cpt"),
                    Map.entry("CPT",   "http://www.ama-assn.org/go/cpt"),
                    Map.entry("NDC",   "http://hl7.org/fhir/sid/ndc"),
                    Map.entry("RXNORM", "http://www.nlm.nih.gov/research/umls/rxnorm"),
                    Map.entry("UCUM",  "http://unitsofmeasure.org"),
                    Map.entry("MDC",   "urn:iso:std:iso:11073:10101"));
    // spotless:on

    private static final Pattern HL7_TABLE = Pattern.compile("HL7\\d{4}");
    private static final Pattern OID = Pattern.compile("\\d+(\\.\\d+)+");

    private Table0396() {}

    /** A name outside the table becomes a local system of ours. */
    public static String toFhir(String name) {
        String system = ROWS.get(name);
        if (system != null) {
            return system;
        }
        if (HL7_TABLE.matcher(name).matches()) {
            return "http://terminology.hl7.org/CodeSystem/v2-" + name.substring(3);
        }
        if (OID.matcher(name).matches()) {
            return "urn:oid:" + name;
        }
        return "https://isoline.example/fhir/CodeSystem/"
                + URLEncoder.encode(name, StandardCharsets.UTF_8).replace("+", "%20");
    }
}
