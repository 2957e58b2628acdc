package dev.isoline.hl7v2fhir.table;

import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;

/** HL7 table 0038, order status. Rows: concept map OrderStatus. */
public final class Table0038 {

    // spotless:off
    private static final Map<String, ServiceRequestStatus> ROWS =
            Map.ofEntries(
                    Map.entry("CA", ServiceRequestStatus.REVOKED),
                    Map.entry("CM", ServiceRequestStatus.COMPLETED),
                    Map.entry("DC", ServiceRequestStatus.REVOKED),
                    Map.entry("ER", ServiceRequestStatus.ENTEREDINERROR),
                    Map.entry("HD", ServiceRequestStatus.ONHOLD),
                    Map.entry("IP", ServiceRequestStatus.ACTIVE),
                    Map.entry("RP", ServiceRequestStatus.REVOKED),
                    Map.entry("SC", ServiceRequestStatus.ACTIVE));
    // spotless:on

    private Table0038() {}

    /** Empty for a code the published map gives no target. */
    public static Optional<ServiceRequestStatus> toFhir(String code) {
        return Optional.ofNullable(ROWS.get(code));
    }
}
