package dev.isoline.hl7v2fhir.table;

import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.ContactPoint.ContactPointUse;

/** HL7 table 0201, telecommunication use code. Rows: concept map TelecommunicationUseCode. */
public final class Table0201 {

    // spotless:off
    private static final Map<String, ContactPointUse> ROWS =
            Map.ofEntries(
                    Map.entry("PRN", ContactPointUse.HOME),
                    Map.entry("WPN", ContactPointUse.WORK),
                    Map.entry("PRS", ContactPointUse.MOBILE));
    // spotless:on

    private Table0201() {}

    /** Empty for a code the published map gives no target. */
    public static Optional<ContactPointUse> toFhir(String code) {
        return Optional.ofNullable(ROWS.get(code));
    }
}
