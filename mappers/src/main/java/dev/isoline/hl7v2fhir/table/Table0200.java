package dev.isoline.hl7v2fhir.table;

import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.HumanName.NameUse;

/** HL7 table 0200, name type. Rows: concept map NameType. */
public final class Table0200 {

    // spotless:off
    private static final Map<String, NameUse> ROWS =
            Map.ofEntries(
                    Map.entry("BAD", NameUse.OLD),
                    Map.entry("D", NameUse.USUAL),
                    Map.entry("L", NameUse.OFFICIAL),
                    Map.entry("M", NameUse.MAIDEN),
                    Map.entry("MSK", NameUse.ANONYMOUS),
                    Map.entry("N", NameUse.NICKNAME),
                    Map.entry("NAV", NameUse.TEMP),
                    Map.entry("R", NameUse.OFFICIAL),
                    Map.entry("TEMP", NameUse.TEMP));
    // spotless:on

    private Table0200() {}

    /** Empty for a code the published map gives no target. */
    public static Optional<NameUse> toFhir(String code) {
        return Optional.ofNullable(ROWS.get(code));
    }
}
