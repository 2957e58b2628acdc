package dev.isoline.hl7v2fhir.table;

import static dev.isoline.hl7v2fhir.table.CodingRows.row;

import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.Coding;

/** HL7 table 0078, interpretation codes. Rows: concept map InterpretationCodes. */
public final class Table0078 {

    // spotless:off
    private static final Map<String, Coding> ROWS =
            Map.ofEntries(
                    row("<", "v3-ObservationInterpretation", "<", "Off scale low"),
                    row(">", "v3-ObservationInterpretation", ">", "Off scale high"),
                    row("A", "v3-ObservationInterpretation", "A", "Abnormal"),
                    row("AA", "v3-ObservationInterpretation", "AA", "Critical abnormal"),
                    row("B", "v3-ObservationInterpretation", "B", "Better"),
                    row("CAR", "v3-ObservationInterpretation", "CAR", "Carrier"),
                    row("D", "v3-ObservationInterpretation", "D", "Significant change down"),
                    row("DET", "v3-ObservationInterpretation", "DET", "Detected"),
                    row("E", "v3-ObservationInterpretation", "E", "Equivocal"),
                    row("EX", "v3-ObservationInterpretation", "EX", "outside threshold"),
                    row("EXP", "v3-ObservationInterpretation", "EXP", "Expected"),
                    row("H", "v3-ObservationInterpretation", "H", "High"),
                    row("HH", "v3-ObservationInterpretation", "HH", "Critical high"),
                    row("HU", "v3-ObservationInterpretation", "HU", "Significantly high"),
                    row("I", "v3-ObservationInterpretation", "I", "Intermediate"),
                    row("IE", "v3-ObservationInterpretation", "IE", "Insufficient evidence"),
                    row("IND", "v3-ObservationInterpretation", "IND", "Indeterminate"),
                    row("L", "v3-ObservationInterpretation", "L", "Low"),
                    row("LL", "v3-ObservationInterpretation", "LL", "Critical low"),
                    row("LU", "v3-ObservationInterpretation", "LU", "Significantly low"),
                    row("MS", "v3-ObservationInterpretation", "MS", "moderately susceptible"),
                    row("N", "v3-ObservationInterpretation", "N", "Normal"),
                    row("NCL", "v3-ObservationInterpretation", "NCL", "No CLSI defined breakpoint"),
                    row("ND", "v3-ObservationInterpretation", "ND", "Not detected"),
                    row("NEG", "v3-ObservationInterpretation", "NEG", "Negative"),
                    row("NR", "v3-ObservationInterpretation", "NR", "Non-reactive"),
                    row("NS", "v3-ObservationInterpretation", "NS", "Non-susceptible"),
                    row("POS", "v3-ObservationInterpretation", "POS", "Positive"),
                    row("R", "v3-ObservationInterpretation", "R", "Resistant"),
                    row("RR", "v3-ObservationInterpretation", "RR", "Reactive"),
                    row("S", "v3-ObservationInterpretation", "S", "Susceptible"),
                    row("SDD", "v3-ObservationInterpretation", "SDD", "Susceptible-dose dependent"),
                    row("SYN-R", "v3-ObservationInterpretation", "SYN-R", "Synergy - resistant"),
                    row("SYN-S", "v3-ObservationInterpretation", "SYN-S", "Synergy - susceptible"),
                    row("U", "v3-ObservationInterpretation", "U", "Significant change up"),
                    row("VS", "v3-ObservationInterpretation", "VS", "very susceptible"),
                    row("UNE", "v3-ObservationInterpretation", "UNE", "Unexpected"),
                    row("W", "v3-ObservationInterpretation", "W", "Worse"),
                    row("WR", "v3-ObservationInterpretation", "WR", "Weakly reactive"));
    // spotless:on

    private Table0078() {}

    /** Empty for a code the published map gives no target. */
    public static Optional<Coding> toFhir(String code) {
        return CodingRows.find(ROWS, code);
    }
}
