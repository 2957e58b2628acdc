package dev.isoline.attach;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import org.hl7.fhir.r4.model.BooleanType;
import org.hl7.fhir.r4.model.Enumerations.AdministrativeGender;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Patient;
import org.junit.jupiter.api.Test;

/** HL7 v2.5.1 ch. 2.5.3 (not there, {@code ""}) and 2.10.4 (snapshot mode), cited from memory. */
class PatientUpdateTest {

    private final Patient stored = new SampleOrder().patient;
    private final Patient incoming = new Patient();

    @Test
    void what_is_not_told_is_kept() {
        incoming.setGender(AdministrativeGender.FEMALE);

        assertThat(merged().equalsDeep(stored)).isTrue();
    }

    /** HAPI then has an empty element where there was none. */
    @Test
    void what_was_only_asked_for_is_not_told() {
        assertThat(incoming.getBirthDateElement().isEmpty()).isTrue();

        assertThat(merged().getBirthDateElement().getValueAsString())
                .isEqualTo(stored.getBirthDateElement().getValueAsString())
                .isNotNull();
    }

    @Test
    void names_are_replaced_as_a_whole() {
        stored.addName().setFamily("Older");
        incoming.addName().setFamily("Newer");

        assertThat(merged().getName()).extracting(n -> n.getFamily()).containsExactly("Newer");
    }

    @Test
    void a_single_value_is_replaced() {
        incoming.setGender(AdministrativeGender.OTHER);
        incoming.getBirthDateElement().setValueAsString("1961-04-13");

        assertThat(merged().getGender()).isEqualTo(AdministrativeGender.OTHER);
        assertThat(merged().getBirthDateElement().getValueAsString()).isEqualTo("1961-04-13");
    }

    @Test
    void a_value_of_several_types_is_replaced() {
        stored.setDeceased(new BooleanType(false));
        incoming.setDeceased(new BooleanType(true));

        assertThat(merged().getDeceasedBooleanType().booleanValue()).isTrue();
    }

    @Test
    void identifiers_are_united() {
        incoming.addIdentifier().setSystem("urn:oid:2.999.10.1").setValue("700123");
        incoming.addIdentifier().setSystem("urn:oid:2.999.10.9").setValue("A-1");

        assertThat(merged().getIdentifier())
                .extracting(Identifier::getValue)
                .containsExactlyInAnyOrder("700123", "A-1");
    }

    @Test
    void an_identifier_told_without_a_type_keeps_the_type_it_has() {
        incoming.addIdentifier().setSystem("urn:oid:2.999.10.1").setValue("700123");

        assertThat(PatientItems.of(merged())).hasSize(4);
        assertThat(merged().getIdentifierFirstRep().hasType()).isTrue();
    }

    @Test
    void cleared_paths_are_removed() {
        stored.setDeceased(new BooleanType(false));
        stored.addTelecom().setValue("555-0100");
        Patient merged =
                PatientUpdate.merge(
                        stored,
                        incoming,
                        Set.of("Patient.telecom", "Patient.birthDate", "Patient.deceased"));

        assertThat(merged.hasTelecom()).isFalse();
        assertThat(merged.hasBirthDate()).isFalse();
        assertThat(merged.hasDeceased()).isFalse();
        assertThat(merged.hasName()).isTrue();
    }

    @Test
    void a_patient_cannot_lose_the_identifiers_it_is_known_by() {
        Patient merged = PatientUpdate.merge(stored, incoming, Set.of("Patient.identifier"));

        assertThat(merged.getIdentifier()).hasSize(1);
    }

    @Test
    void the_stored_patient_is_not_touched_and_its_id_stays() {
        incoming.setId("other");
        incoming.addName().setFamily("Newer");

        assertThat(merged().getIdElement().getIdPart()).isEqualTo(stored.getIdPart());
        assertThat(stored.getNameFirstRep().getFamily()).isEqualTo("Ferrow");
    }

    private Patient merged() {
        return PatientUpdate.merge(stored, incoming, Set.of());
    }
}
