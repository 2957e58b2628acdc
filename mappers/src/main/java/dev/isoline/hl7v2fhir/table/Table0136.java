package dev.isoline.hl7v2fhir.table;

import java.util.Optional;

/** HL7 table 0136, yes/no indicator. Rows: concept map YesNoIndicator. */
public final class Table0136 {

    public static final String SYSTEM = "http://terminology.hl7.org/CodeSystem/v2-0136";

    private Table0136() {}

    /** Empty for anything but Y and N. */
    public static Optional<Boolean> toFhir(String code) {
        return switch (code) {
            case "Y" -> Optional.of(true);
            case "N" -> Optional.of(false);
            default -> Optional.empty();
        };
    }
}
