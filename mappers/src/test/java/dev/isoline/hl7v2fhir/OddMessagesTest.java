package dev.isoline.hl7v2fhir;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Map;
import org.hl7.fhir.r4.model.Coverage;
import org.hl7.fhir.r4.model.HumanName.NameUse;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Odd messages and what is right for each: shared/data/hl7v2-odd/manifest.tsv. */
class OddMessagesTest {

    private static final MappingContext CLINIC =
            context("urn:oid:2.999.1.9", ZoneId.of("Europe/Berlin"));

    private static MappingContext context(String authority, ZoneId zone) {
        return new MappingContext(
                "clinic1",
                authority,
                Map.of("CLINIC1", "urn:oid:2.999.1.1"),
                zone,
                Instant.parse("2026-11-03T09:15:00Z"));
    }

    @BeforeAll
    static void material() {
        SharedData.folder("hl7v2-odd");
    }

    private static MappedMessage map(String name) {
        return map(name, CLINIC);
    }

    private static MappedMessage map(String name, MappingContext context) {
        String text = SharedData.text(SharedData.folder("hl7v2-odd").resolve(name + ".hl7"));
        return MessageToFhir.map(Messages.parse(text), context);
    }

    private static Patient patient(String name) {
        return map(name).patient().patient();
    }

    @Test
    void
            pid3_four_drops_the_empty_one_keeps_the_rest_and_puts_the_configured_record_number_first() {
        assertThat(patient("pid3-four").getIdentifier())
                .extracting(Identifier::getValue)
                .containsExactly("4711", "888-12", "99", "4712");
        assertThat(patient("pid3-four").getIdentifierFirstRep().getSystem())
                .isEqualTo("urn:oid:2.999.1.1");
    }

    @Test
    void pid3_noaa_uses_the_default_authority_or_is_refused() {
        assertThat(patient("pid3-noaa").getIdentifierFirstRep().getSystem())
                .isEqualTo("urn:oid:2.999.1.9");
        assertThatThrownBy(() -> map("pid3-noaa", context("", ZoneId.of("UTC"))))
                .isInstanceOfSatisfying(
                        ContentError.class,
                        e ->
                                assertThat(e.problems())
                                        .extracting(Problem::location)
                                        .containsExactly("PID-3"));
    }

    @Test
    void pid3_same_id_other_authority_is_another_patient() {
        assertThat(patient("pid3-same-id-other-aa").getId())
                .isNotEqualTo(patient("ok-orm").getId());
    }

    @ParameterizedTest
    @CsvSource({"pid5-empty,PID-5", "trunc-no-obr,OBR", "msh-only,PID"})
    void a_message_without_what_an_order_needs_is_refused_naming_it(String name, String location) {
        assertThatThrownBy(() -> map(name))
                .isInstanceOfSatisfying(
                        ContentError.class,
                        e ->
                                assertThat(e.problems())
                                        .extracting(Problem::location)
                                        .containsExactly(location));
    }

    @Test
    void pid5_null_clears_the_name() {
        assertThat(map("pid5-null").patient().cleared()).contains("Patient.name");
        assertThat(patient("pid5-null").hasName()).isFalse();
    }

    @Test
    void pid5_alias_first_still_puts_the_legal_name_first() {
        assertThat(patient("pid5-alias-first").getNameFirstRep().getUse())
                .isEqualTo(NameUse.OFFICIAL);
        assertThat(patient("pid5-alias-first").getNameFirstRep().getFamily()).isEqualTo("Berg");
    }

    @ParameterizedTest
    @CsvSource({"dob-1,1961-04", "dob-3,1961-04-12", "dob-4,1961-04-12"})
    void a_birth_date_keeps_its_digits(String name, String date) {
        assertThat(patient(name).getBirthDateElement().getValueAsString()).isEqualTo(date);
    }

    @ParameterizedTest
    @CsvSource({"dob-5", "dob-6"})
    void an_impossible_birth_date_becomes_a_note_and_the_order_stands(String name) {
        assertThat(patient(name).hasBirthDate()).isFalse();
        assertThat(map(name).notes()).extracting(Note::field).contains("PID-7");
        assertThat(map(name).orders()).hasSize(1);
    }

    @Test
    void ts_dst_gap_keeps_the_wall_clock_with_the_offset_before_the_gap() {
        assertThat(
                        map("ts-dst-gap")
                                .orders()
                                .get(0)
                                .serviceRequest()
                                .getAuthoredOnElement()
                                .getValueAsString())
                .isEqualTo("2026-03-29T02:30:00+01:00");
    }

    @Test
    void esc_ok_reads_all_five_escapes() {
        assertThat(patient("esc-ok").getNameFirstRep().getFamily())
                .isEqualTo("Berg & Sons | ^ ~ \\");
    }

    @Test
    void in1_two_gives_two_coverages_in_order() {
        assertThat(map("in1-two").patient().coverages())
                .extracting(Coverage::getOrder)
                .containsExactly(1, 2);
    }

    @Test
    void in1_nopayerid_names_the_payor() {
        assertThat(
                        map("in1-nopayerid")
                                .patient()
                                .coverages()
                                .get(0)
                                .getPayorFirstRep()
                                .getDisplay())
                .isEqualTo("Acme Health");
    }

    @Test
    void in1_after_obr_still_makes_a_coverage() {
        MappedMessage mapped = map("in1-after-obr");
        assertThat(mapped.patient().coverages()).hasSize(1);
        assertThat(mapped.orders().get(0).serviceRequest().getInsurance()).hasSize(1);
    }

    @Test
    void omg_o19_two_gives_two_service_requests() {
        assertThat(map("omg-o19-two").orders())
                .extracting(o -> o.serviceRequest().getCode().getCodingFirstRep().getCode())
                .containsExactly("93224", "93241");
    }

    @Test
    void orc_cancel_is_told_by_its_control_code() {
        ClinicalOrder order = map("orc-cancel").orders().get(0);
        assertThat(order.control()).isEqualTo("CA");
        assertThat(order.serviceRequest().getStatus()).isEqualTo(ServiceRequestStatus.ACTIVE);
    }

    @Test
    void z_between_changes_nothing() {
        MappedMessage odd = map("z-between");
        assertThat(odd.notes()).isEqualTo(map("ok-orm").notes());
        assertThat(
                        odd.orders()
                                .get(0)
                                .serviceRequest()
                                .equalsDeep(map("ok-orm").orders().get(0).serviceRequest()))
                .isTrue();
    }
}
