package dev.isoline.hl7v2fhir.table;

import static dev.isoline.hl7v2fhir.table.CodingRows.row;

import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.Coding;

/** HL7 table 0131, contact role. Rows: concept map ContactRole. */
public final class Table0131 {

    // spotless:off
    private static final Map<String, Coding> ROWS =
            Map.ofEntries(
                    row("E", "v2-0131", "E", "Employer"),
                    row("C", "v2-0131", "C", "Emergency Contact"),
                    row("F", "v2-0131", "F", "Federal Agency"),
                    row("I", "v2-0131", "I", "Insurance Company"),
                    row("N", "v2-0131", "N", "Next-of-Kin"),
                    row("S", "v2-0131", "S", "State Agency"),
                    row("O", "v2-0131", "O", "Other"),
                    row("U", "v2-0131", "U", "Unknown"));
    // spotless:on

    private Table0131() {}

    /** Empty for a code the published map gives no target. */
    public static Optional<Coding> toFhir(String code) {
        return CodingRows.find(ROWS, code);
    }
}
