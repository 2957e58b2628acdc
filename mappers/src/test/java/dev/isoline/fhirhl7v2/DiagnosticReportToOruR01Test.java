package dev.isoline.fhirhl7v2;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import ca.uhn.hl7v2.HL7Exception;
import ca.uhn.hl7v2.util.Terser;
import dev.isoline.hl7v2.StrictHapi;
import java.nio.charset.StandardCharsets;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.DiagnosticReport.DiagnosticReportStatus;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * ORU^R01 as HAPI's v2.5.1 structures read it. Field positions: HL7 v2.5.1 ch. 3, 4 and 7; the
 * codes of each status: tables 0038, 0085 and 0123.
 */
class DiagnosticReportToOruR01Test {

    private static final String ORDER = "/PATIENT_RESULT/ORDER_OBSERVATION/";
    private final byte[] message =
            DiagnosticReportToOruR01.map(ReportBundles.preliminary(), ReportBundles.CONTEXT);
    private final Terser oru = StrictHapi.terser(message);

    @Test
    void msh_says_who_sends_what_in_utf_8() throws HL7Exception {
        assertThat(fields("/MSH-3", "/MSH-4", "/MSH-5", "/MSH-6", "/MSH-7", "/MSH-10", "/MSH-18"))
                .containsExactly(
                        "ISOLINE",
                        "MONITORING",
                        "HBEHR",
                        "HARROWBAY",
                        "20261201101500+0000",
                        "R1",
                        "UNICODE UTF-8");
        assertThat(fields("/MSH-9-1", "/MSH-9-2", "/MSH-9-3", "/MSH-11", "/MSH-12"))
                .containsExactly("ORU", "R01", "ORU_R01", "P", "2.5.1");
    }

    @Test
    void pid_names_the_patient_as_the_clinic_does() throws HL7Exception {
        assertThat(
                        fields(
                                "/.PID-3(0)-1",
                                "/.PID-3(0)-4-1",
                                "/.PID-3(0)-4-2",
                                "/.PID-3(0)-4-3",
                                "/.PID-3(0)-5"))
                .containsExactly("4711", "HARROWBAY", "2.999.10.1", "ISO", "MR");
        assertThat(fields("/.PID-3(1)-1", "/.PID-3(1)-4-1")).containsExactly("9", "NORTH WARD");
        assertThat(fields("/.PID-5-1", "/.PID-5-2", "/.PID-5-3", "/.PID-5-7", "/.PID-7", "/.PID-8"))
                .containsExactly("Berg & Sønn|^~\\", "Anna", "Maria", "L", "196104", "F");
    }

    @Test
    void orc_and_obr_carry_the_numbers_the_period_and_the_status() throws HL7Exception {
        assertThat(
                        fields(
                                ORDER + "ORC-1",
                                ORDER + "ORC-2-1",
                                ORDER + "ORC-2-2",
                                ORDER + "ORC-3-1",
                                ORDER + "ORC-3-2",
                                ORDER + "ORC-5"))
                .containsExactly("RE", "P-77", "HARROWBAY", "F-900", "ISOLINE", "A");
        assertThat(
                        fields(
                                ORDER + "OBR-2-1",
                                ORDER + "OBR-3-1",
                                ORDER + "OBR-4-1",
                                ORDER + "OBR-4-3",
                                ORDER + "OBR-7",
                                ORDER + "OBR-8"))
                .containsExactly(
                        "P-77",
                        "F-900",
                        "18754-2",
                        "LN",
                        "20261110090000+0100",
                        "20261124090000+0100");
        assertThat(
                        fields(
                                ORDER + "OBR-16-1",
                                ORDER + "OBR-16-2",
                                ORDER + "OBR-16-9-1",
                                ORDER + "OBR-16-13"))
                .containsExactly("1234567893", "Hill", "NPI", "NPI");
        assertThat(fields(ORDER + "OBR-22", ORDER + "OBR-24", ORDER + "OBR-25"))
                .containsExactly("20261201101500.125+0000", "EC", "P");
    }

    @Test
    void a_preliminary_result_says_that_a_program_computed_it() throws HL7Exception {
        assertThat(oru.get(ORDER + "NTE(0)-3")).contains("Preliminary").contains("program");
        assertThat(text()).contains("|Sinus rhythm.\\.br\\One pause \\F\\ 2.3 s.\r");
    }

    @Test
    void a_number_carries_its_ucum_unit() throws HL7Exception {
        assertThat(
                        fields(
                                obx(0, 2),
                                obx(0, 3) + "-1",
                                obx(0, 3) + "-3",
                                obx(0, 5),
                                obx(0, 6) + "-1",
                                obx(0, 6) + "-3"))
                .containsExactly("NM", "41924-2", "LN", "71.5", "/min", "UCUM");
        assertThat(fields(obx(0, 4), obx(0, 11), obx(0, 14)))
                .containsExactly("1", "P", "20261110090000+0100");
    }

    @Test
    void a_missing_value_is_obx_11_x_with_the_reason() throws HL7Exception {
        assertThat(fields(obx(1, 2), obx(1, 5), obx(1, 11))).containsExactly(null, null, "X");
        assertThat(oru.get(ORDER + "OBSERVATION(1)/NTE-3")).isEqualTo("No value: Unknown");
    }

    @Test
    void samples_have_no_obx_and_leave_no_gap() throws HL7Exception {
        assertThat(fields(obx(2, 1), obx(2, 3) + "-1", obx(2, 3) + "-3", obx(2, 5), obx(2, 4)))
                .containsExactly("3", "pause-count", "99ISOLINE", "0", "2");
    }

    @Test
    void codes_text_and_documents_have_their_own_types() throws HL7Exception {
        assertThat(fields(obx(3, 2), obx(3, 5) + "-1", obx(3, 5) + "-3"))
                .containsExactly("CE", "49436004", "SCT");
        assertThat(oru.get(obx(4, 2))).isEqualTo("TX");
        assertThat(text()).contains("|5\\S\\2\\.br\\and more|");
        assertThat(
                        fields(
                                obx(5, 2),
                                obx(5, 5) + "-2",
                                obx(5, 5) + "-3",
                                obx(5, 5) + "-4",
                                obx(5, 5) + "-5"))
                .containsExactly("ED", "application", "pdf", "Base64", "JVBERi0xLjQ=");
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "REGISTERED, REGISTERED, IP, I, I", "PRELIMINARY, PRELIMINARY, A, P, P",
                "FINAL, FINAL, CM, F, F",
        "CORRECTED, CORRECTED, CM, C, C", "CANCELLED, CANCELLED, CA, X, X",
                "ENTEREDINERROR, ENTEREDINERROR, , C, W"
    })
    void each_status_has_its_codes(
            DiagnosticReportStatus report,
            ObservationStatus observation,
            String orc5,
            String obr25,
            String obx11)
            throws HL7Exception {
        var terser =
                StrictHapi.terser(
                        DiagnosticReportToOruR01.map(
                                ReportBundles.of(report, observation), ReportBundles.CONTEXT));
        assertThat(terser.get(ORDER + "ORC-5")).isEqualTo(orc5);
        assertThat(terser.get(ORDER + "OBR-25")).isEqualTo(obr25);
        assertThat(terser.get(obx(0, 11))).isEqualTo(obx11);
    }

    @Test
    void a_final_result_does_not_call_itself_preliminary() {
        byte[] last =
                DiagnosticReportToOruR01.map(
                        ReportBundles.of(DiagnosticReportStatus.FINAL, ObservationStatus.FINAL),
                        ReportBundles.CONTEXT);
        assertThat(new String(last, StandardCharsets.UTF_8)).doesNotContain("Preliminary");
    }

    @Test
    void the_same_bundle_makes_the_same_bytes() {
        assertThat(DiagnosticReportToOruR01.map(ReportBundles.preliminary(), ReportBundles.CONTEXT))
                .isEqualTo(message);
    }

    @Test
    void a_bundle_without_a_report_is_refused_by_name() {
        assertThatThrownBy(() -> DiagnosticReportToOruR01.map(new Bundle(), ReportBundles.CONTEXT))
                .hasMessageContaining("DiagnosticReport");
    }

    private static String obx(int index, int field) {
        return ORDER + "OBSERVATION(" + index + ")/OBX-" + field;
    }

    private String text() {
        return new String(message, StandardCharsets.UTF_8);
    }

    private String[] fields(String... paths) throws HL7Exception {
        var values = new String[paths.length];
        for (int i = 0; i < paths.length; i++) {
            values[i] = oru.get(paths[i]);
        }
        return values;
    }
}
