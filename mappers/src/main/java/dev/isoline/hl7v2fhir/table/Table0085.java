package dev.isoline.hl7v2fhir.table;

import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;

/**
 * HL7 table 0085, observation result status codes interpretation. Rows: concept map
 * ObservationResultStatusCodesInterpretation; R, S, U and V are our own
 * (docs/mappings/obx-to-observation.md).
 */
public final class Table0085 {

    // spotless:off
    private static final Map<String, ObservationStatus> ROWS =
            Map.ofEntries(
                    Map.entry("A", ObservationStatus.AMENDED),
                    Map.entry("C", ObservationStatus.CORRECTED),
                    Map.entry("D", ObservationStatus.ENTEREDINERROR),
                    Map.entry("F", ObservationStatus.FINAL),
                    Map.entry("P", ObservationStatus.PRELIMINARY),
                    Map.entry("X", ObservationStatus.CANCELLED),
                    Map.entry("W", ObservationStatus.ENTEREDINERROR),
                    Map.entry("R", ObservationStatus.PRELIMINARY),
                    Map.entry("S", ObservationStatus.PRELIMINARY),
                    Map.entry("U", ObservationStatus.FINAL),
                    Map.entry("V", ObservationStatus.FINAL));
    // spotless:on

    private Table0085() {}

    /** Empty for a code the published map gives no target. */
    public static Optional<ObservationStatus> toFhir(String code) {
        return Optional.ofNullable(ROWS.get(code));
    }
}
