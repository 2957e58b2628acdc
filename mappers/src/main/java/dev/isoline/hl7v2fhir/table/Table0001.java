package dev.isoline.hl7v2fhir.table;

import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.Enumerations.AdministrativeGender;

/** HL7 table 0001, administrative sex. Rows: concept map AdministrativeSex. */
public final class Table0001 {

    // spotless:off
    private static final Map<String, AdministrativeGender> ROWS =
            Map.ofEntries(
                    Map.entry("F", AdministrativeGender.FEMALE),
                    Map.entry("M", AdministrativeGender.MALE),
                    Map.entry("O", AdministrativeGender.OTHER),
                    Map.entry("U", AdministrativeGender.UNKNOWN),
                    Map.entry("A", AdministrativeGender.OTHER),
                    Map.entry("N", AdministrativeGender.OTHER));
    // spotless:on

    private Table0001() {}

    /** Empty for a code the published map gives no target. */
    public static Optional<AdministrativeGender> toFhir(String code) {
        return Optional.ofNullable(ROWS.get(code));
    }
}
