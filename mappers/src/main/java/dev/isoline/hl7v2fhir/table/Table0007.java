package dev.isoline.hl7v2fhir.table;

import static dev.isoline.hl7v2fhir.table.CodingRows.row;

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
        return CodingRows.find(ROWS, code);
    }
}
