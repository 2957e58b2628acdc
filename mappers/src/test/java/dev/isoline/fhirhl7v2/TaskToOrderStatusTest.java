package dev.isoline.fhirhl7v2;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.hl7v2.HL7Exception;
import dev.isoline.hl7v2.StrictHapi;
import dev.isoline.order.OrderState;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Task;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Order control and status codes: HL7 v2.5.1 tables 0119, 0038 and 0123, ch. 4.5.1 and 7.4.1. */
class TaskToOrderStatusTest {

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "ON_HOLD, OH, HD,",
        "ACCEPTED, OK,,",
        "READY, SC, SC, S",
        "RECORDING, SC, IP, I",
        "RECORDING_RECEIVED, SC, IP, I",
        "REVIEW, SC, A, P",
        "COMPLETED, SC, CM, F",
        "REJECTED, UA,,",
        "CANCELLED, CR, CA, X"
    })
    void each_state_is_told_in_orc_and_obr(OrderState state, String orc1, String orc5, String obr25)
            throws HL7Exception {
        var orm = StrictHapi.terser(message(state));
        assertThat(orm.get("/.ORC-1")).isEqualTo(orc1);
        assertThat(orm.get("/.ORC-5")).isEqualTo(orc5);
        assertThat(orm.get("/.OBR-25")).isEqualTo(obr25);
        assertThat(orm.get("/.ORC-2-1")).isEqualTo("P-77");
        assertThat(orm.get("/.ORC-2-2")).isEqualTo("HARROWBAY");
        assertThat(orm.get("/.OBR-3-1")).isEqualTo("F-900");
        assertThat(orm.get("/.PID-3-1")).isEqualTo("4711");
        assertThat(orm.get("/.ORC-16-2")).isEqualTo("IN1-8: The group number is missing.");
        assertThat(orm.get("/MSH-9-3")).isEqualTo("ORM_O01");
    }

    @ParameterizedTest(name = "{0}")
    @EnumSource(OrderState.class)
    void every_state_but_received_is_told(OrderState state) {
        assertThat(
                        TaskToOrderStatus.map(
                                        task(state),
                                        ReportBundles.order(),
                                        ReportBundles.patient(),
                                        ReportBundles.CONTEXT)
                                .isPresent())
                .isEqualTo(state != OrderState.RECEIVED);
    }

    private static byte[] message(OrderState state) {
        return TaskToOrderStatus.map(
                        task(state),
                        ReportBundles.order(),
                        ReportBundles.patient(),
                        ReportBundles.CONTEXT)
                .orElseThrow();
    }

    private static Task task(OrderState state) {
        var task = new Task();
        task.setBusinessStatus(
                new CodeableConcept(
                        new Coding(
                                "https://isoline.example/fhir/CodeSystem/order-business-status",
                                state.businessStatus(),
                                null)));
        task.setLastModifiedElement(new DateTimeType("2026-11-25T08:30:00Z"));
        task.getStatusReason().setText("IN1-8: The group number is missing.");
        return task;
    }
}
