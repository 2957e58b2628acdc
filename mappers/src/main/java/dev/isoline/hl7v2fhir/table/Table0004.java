package dev.isoline.hl7v2fhir.table;

import static dev.isoline.hl7v2fhir.table.CodingRows.row;

import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Encounter.EncounterStatus;

/** HL7 table 0004, patient class. Rows: concept map PatientClass[EncounterClass]. */
public final class Table0004 {

    // spotless:off
    private static final Map<String, Coding> ROWS =
            Map.ofEntries(
                    row("E", "v3-ActCode", "EMER", ""),
                    row("I", "v3-ActCode", "IMP", ""),
                    row("O", "v3-ActCode", "AMB", ""),
                    row("P", "v3-ActCode", "PRENC", ""),
                    row("R", "v2-0004", "R", ""),
                    row("B", "v2-0004", "B", ""),
                    row("C", "v2-0004", "C", ""),
                    row("N", "v2-0004", "N", ""),
                    row("U", "v2-0004", "U", ""));

    private static final Map<String, EncounterStatus> STATUSES =
            Map.ofEntries(
                    Map.entry("E", EncounterStatus.INPROGRESS),
                    Map.entry("I", EncounterStatus.INPROGRESS),
                    Map.entry("O", EncounterStatus.INPROGRESS),
                    Map.entry("P", EncounterStatus.PLANNED),
                    Map.entry("R", EncounterStatus.INPROGRESS),
                    Map.entry("B", EncounterStatus.INPROGRESS),
                    Map.entry("C", EncounterStatus.INPROGRESS),
                    Map.entry("N", EncounterStatus.INPROGRESS),
                    Map.entry("U", EncounterStatus.UNKNOWN));
    // spotless:on

    private Table0004() {}

    /** Empty for a code the published map gives no target. */
    public static Optional<Coding> toFhir(String code) {
        return CodingRows.find(ROWS, code);
    }

    /** Empty for a code the published map PatientClass[EncounterStatus] gives no target. */
    public static Optional<EncounterStatus> toStatus(String code) {
        return Optional.ofNullable(STATUSES.get(code));
    }
}
