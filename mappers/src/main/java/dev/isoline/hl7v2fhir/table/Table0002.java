package dev.isoline.hl7v2fhir.table;

import static dev.isoline.hl7v2fhir.table.CodingRows.row;

import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.Coding;

/** HL7 table 0002, marital status. Rows: concept map MaritalStatus. */
public final class Table0002 {

    // spotless:off
    private static final Map<String, Coding> ROWS =
            Map.ofEntries(
                    row("A", "v3-MaritalStatus", "L", "Legally Separated"),
                    row("D", "v3-MaritalStatus", "D", "Divorced"),
                    row("M", "v3-MaritalStatus", "M", "Married"),
                    row("S", "v3-MaritalStatus", "S", "Never Married"),
                    row("W", "v3-MaritalStatus", "W", "Widowed"),
                    row("C", "v3-MaritalStatus", "C", "Common Law"),
                    row("G", "v3-MaritalStatus", "T", "Domestic partner"),
                    row("P", "v3-MaritalStatus", "T", "Domestic partner"),
                    row("R", "v3-MaritalStatus", "T", "Domestic partner"),
                    row("E", "v3-MaritalStatus", "L", "Legally Separated"),
                    row("N", "v3-MaritalStatus", "A", "Annulled"),
                    row("I", "v3-MaritalStatus", "I", "Interlocutory"),
                    row("B", "v3-MaritalStatus", "U", "unmarried"),
                    row("U", "v3-NullFlavor", "UNK", "Unknown"),
                    row("O", "v3-NullFlavor", "OTH", "Other"),
                    row("T", "v3-NullFlavor", "NAVU", "Not available"));
    // spotless:on

    private Table0002() {}

    /** Empty for a code the published map gives no target. */
    public static Optional<Coding> toFhir(String code) {
        return CodingRows.find(ROWS, code);
    }
}
