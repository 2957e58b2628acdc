package dev.isoline.hl7v2fhir.table;

import static dev.isoline.hl7v2fhir.table.CodingRows.row;

import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.Coding;

/** HL7 table 0063, relationship. Rows: concept map Relationship. */
public final class Table0063 {

    // spotless:off
    private static final Map<String, Coding> ROWS =
            Map.ofEntries(
                    row("SEL", "v3-RoleCode", "ONESELF", "self"),
                    row("SPO", "v3-RoleCode", "SPS", "spouse"),
                    row("DOM", "v3-RoleCode", "SIGOTHR", "significant other"),
                    row("CHD", "v3-RoleCode", "CHILD", "child"),
                    row("GCH", "v3-RoleCode", "GRNDCHILD", "grandchild"),
                    row("NCH", "v3-RoleCode", "NCHILD", "natural child"),
                    row("SCH", "v3-RoleCode", "STPCHLD", "step child"),
                    row("FCH", "v3-RoleCode", "CHLDFOST", "foster child"),
                    row("DEP", "v2-0063", "DEP", "Handicapped dependent"),
                    row("WRD", "v2-0063", "WRD", "Ward of court"),
                    row("PAR", "v3-RoleCode", "PRN", "parent"),
                    row("MTH", "v3-RoleCode", "MTH", "mother"),
                    row("FTH", "v3-RoleCode", "FTH", "father"),
                    row("CGV", "v2-0063", "CGV", "Care giver"),
                    row("GRD", "v2-0063", "GRD", "Guardian"),
                    row("GRP", "v3-RoleCode", "GRPRN", "grandparent"),
                    row("EXF", "v3-RoleCode", "EXT", "extended family member"),
                    row("SIB", "v3-RoleCode", "SIB", "sibling"),
                    row("BRO", "v3-RoleCode", "BRO", "brother"),
                    row("SIS", "v3-RoleCode", "SIS", "sister"),
                    row("FND", "v3-RoleCode", "FRND", "unrelated friend"),
                    row("OAD", "v2-0063", "OAD", "Other adult"),
                    row("EME", "v2-0063", "EME", "Employee"),
                    row("EMR", "v2-0131", "E", "Employer"),
                    row("ASC", "v2-0063", "ASC", "Associate"),
                    row("EMC", "v2-0131", "C", "Emergency Contact"),
                    row("OWN", "v2-0063", "OWN", "Owner"),
                    row("TRA", "v2-0063", "TRA", "Trainer"),
                    row("MGR", "v2-0063", "MGR", "Manager"),
                    row("NON", "v2-0063", "NON", "None"),
                    row("UNK", "v2-0131", "U", "Unknown"),
                    row("OTH", "v2-0131", "O", "Other"));
    // spotless:on

    private Table0063() {}

    /** Empty for a code the published map gives no target. */
    public static Optional<Coding> toFhir(String code) {
        return CodingRows.find(ROWS, code);
    }
}
