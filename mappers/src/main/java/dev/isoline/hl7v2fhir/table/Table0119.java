package dev.isoline.hl7v2fhir.table;

import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;

/**
 * HL7 table 0119, order control codes. Rows: concept map OrderControlCode[ServiceRequest.status].
 */
public final class Table0119 {

    // spotless:off
    private static final Map<String, ServiceRequestStatus> ROWS =
            Map.ofEntries(
                    Map.entry("AF", ServiceRequestStatus.ACTIVE),
                    Map.entry("CA", ServiceRequestStatus.ACTIVE),
                    Map.entry("CR", ServiceRequestStatus.REVOKED),
                    Map.entry("DC", ServiceRequestStatus.REVOKED),
                    Map.entry("DF", ServiceRequestStatus.REVOKED),
                    Map.entry("DR", ServiceRequestStatus.REVOKED),
                    Map.entry("FU", ServiceRequestStatus.COMPLETED),
                    Map.entry("HD", ServiceRequestStatus.ACTIVE),
                    Map.entry("HR", ServiceRequestStatus.ONHOLD),
                    Map.entry("NW", ServiceRequestStatus.ACTIVE),
                    Map.entry("OC", ServiceRequestStatus.REVOKED),
                    Map.entry("OD", ServiceRequestStatus.REVOKED),
                    Map.entry("OH", ServiceRequestStatus.ONHOLD),
                    Map.entry("OK", ServiceRequestStatus.ACTIVE),
                    Map.entry("PR", ServiceRequestStatus.ACTIVE),
                    Map.entry("PY", ServiceRequestStatus.ACTIVE),
                    Map.entry("RL", ServiceRequestStatus.ACTIVE),
                    Map.entry("RO", ServiceRequestStatus.ACTIVE),
                    Map.entry("RQ", ServiceRequestStatus.ACTIVE));
    // spotless:on

    private Table0119() {}

    /** Empty for a code the published map gives no target. */
    public static Optional<ServiceRequestStatus> toFhir(String code) {
        return Optional.ofNullable(ROWS.get(code));
    }
}
