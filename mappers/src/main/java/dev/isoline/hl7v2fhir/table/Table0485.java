package dev.isoline.hl7v2fhir.table;

import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestPriority;

/** HL7 table 0485, extended priority codes. Rows: concept map ExtendedPriorityCodes. */
public final class Table0485 {

    // spotless:off
    private static final Map<String, ServiceRequestPriority> ROWS =
            Map.ofEntries(
                    Map.entry("S", ServiceRequestPriority.STAT),
                    Map.entry("A", ServiceRequestPriority.ASAP),
                    Map.entry("R", ServiceRequestPriority.ROUTINE));
    // spotless:on

    private Table0485() {}

    /** Empty for a code the published map gives no target. */
    public static Optional<ServiceRequestPriority> toFhir(String code) {
        return Optional.ofNullable(ROWS.get(code));
    }

    /** As {@link #toFhir}, also for the words many senders write into OBR-5 (common practice). */
    public static Optional<ServiceRequestPriority> ofWord(String code) {
        return switch (code.toUpperCase(java.util.Locale.ROOT)) {
            case "STAT" -> Optional.of(ServiceRequestPriority.STAT);
            case "URGENT" -> Optional.of(ServiceRequestPriority.URGENT);
            case "ASAP" -> Optional.of(ServiceRequestPriority.ASAP);
            case "ROUTINE" -> Optional.of(ServiceRequestPriority.ROUTINE);
            default -> toFhir(code);
        };
    }
}
