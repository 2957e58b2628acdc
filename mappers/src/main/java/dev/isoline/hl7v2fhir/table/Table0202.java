package dev.isoline.hl7v2fhir.table;

import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.ContactPoint.ContactPointSystem;

/**
 * HL7 table 0202, telecommunication equipment type. Rows: concept map
 * TelecommunicationEquipmentType.
 */
public final class Table0202 {

    // spotless:off
    private static final Map<String, ContactPointSystem> ROWS =
            Map.ofEntries(
                    Map.entry("PH", ContactPointSystem.PHONE),
                    Map.entry("FX", ContactPointSystem.FAX),
                    Map.entry("MD", ContactPointSystem.OTHER),
                    Map.entry("SAT", ContactPointSystem.OTHER),
                    Map.entry("BP", ContactPointSystem.PAGER),
                    Map.entry("Internet", ContactPointSystem.EMAIL),
                    Map.entry("X.400", ContactPointSystem.EMAIL),
                    Map.entry("TDD", ContactPointSystem.OTHER),
                    Map.entry("TTY", ContactPointSystem.OTHER));
    // spotless:on

    private Table0202() {}

    /** Empty for a code the published map gives no target. */
    public static Optional<ContactPointSystem> toFhir(String code) {
        return Optional.ofNullable(ROWS.get(code));
    }

    /** CP means a use, not a system: a mobile telephone. */
    public static boolean isMobile(String code) {
        return "CP".equals(code);
    }
}
