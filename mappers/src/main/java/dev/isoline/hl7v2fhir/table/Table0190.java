package dev.isoline.hl7v2fhir.table;

import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.Address.AddressType;
import org.hl7.fhir.r4.model.Address.AddressUse;

/** HL7 table 0190, address type. Rows: concept maps AddressType[Type] and AddressType[Use]. */
public final class Table0190 {

    // spotless:off
    private static final Map<String, AddressType> TYPES =
            Map.ofEntries(
                    Map.entry("M", AddressType.POSTAL),
                    Map.entry("SH", AddressType.POSTAL));

    private static final Map<String, AddressUse> USES =
            Map.ofEntries(
                    Map.entry("BA", AddressUse.OLD),
                    Map.entry("BI", AddressUse.BILLING),
                    Map.entry("C", AddressUse.TEMP),
                    Map.entry("B", AddressUse.WORK),
                    Map.entry("H", AddressUse.HOME),
                    Map.entry("O", AddressUse.WORK));
    // spotless:on

    private Table0190() {}

    public static Optional<AddressType> toType(String code) {
        return Optional.ofNullable(TYPES.get(code));
    }

    public static Optional<AddressUse> toUse(String code) {
        return Optional.ofNullable(USES.get(code));
    }
}
