package dev.isoline.hl7v2fhir.table;

import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.Coding;

/** HL7 table 0007, admission type. Rows: concept map AdmissionType. */
public final class Table0007 {

    // spotless:off
    private static final Map<String, Coding> ROWS =
            Map.ofEntries(
                    row("A", "v2-0007", "A", "Accident"),
                    row("E", "v2-0007", "E", "Emergency"),
                    row("L", "v2-0007", "L", "Labor and Delivery"),
                    row("R", "v2-0007", "R", "Routine"),
                    row("N", "v2-0007", "N", "Newborn (Birth in healthcare facility)"),
                    row("U", "v2-0007", "U", "Urgent"),
                    row("C", "v2-0007", "C", "Elective"));
    // spotless:on

    private Table0007() {}

    /** Empty for a code the published map gives no target. */
    public static Optional<Coding> toFhir(String code) {
        return Optional.ofNullable(ROWS.get(code)).map(Coding::copy);
    }

    private static Map.Entry<String, Coding> row(
            String code, String system, String target, String display) {
        return Map.entry(
                code,
                new Coding("http://terminology.hl7.org/CodeSystem/" + system, target, display));
    }
}
