package dev.isoline.attach;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.order.Problem;
import dev.isoline.order.Vocabulary;
import java.util.List;
import org.hl7.fhir.r4.model.Enumerations.AdministrativeGender;
import org.hl7.fhir.r4.model.Patient;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ContradictionsTest {

    @ParameterizedTest(name = "{0} and {1}")
    @CsvSource({
        "1961-04-12, 1961-04-13, true",
        "1961-04-12, 1961-05, true",
        "1961-04, 1962, true",
        "1961-04-12, 1961-04, false",
        "1961, 1961-04-12, false",
        "1961-04-12, 1961-04-12, false"
    })
    void birth_dates_contradict_only_as_far_as_both_are_told(
            String one, String other, boolean contradict) {
        assertThat(between(born(one), born(other)).isEmpty()).isNotEqualTo(contradict);
    }

    @ParameterizedTest(name = "{0} and {1}")
    @CsvSource({
        "MALE, FEMALE, true",
        "MALE, OTHER, true",
        "MALE, UNKNOWN, false",
        "UNKNOWN, FEMALE, false",
        "MALE, MALE, false"
    })
    void an_unknown_sex_contradicts_none(
            AdministrativeGender one, AdministrativeGender other, boolean contradict) {
        Patient stored = new Patient().setGender(one);
        Patient incoming = new Patient().setGender(other);

        assertThat(between(stored, incoming).isEmpty()).isNotEqualTo(contradict);
    }

    @Test
    void a_silent_account_contradicts_none() {
        Patient stored = born("1961-04-12").setGender(AdministrativeGender.MALE);

        assertThat(between(stored, new Patient())).isEmpty();
        assertThat(between(new Patient(), stored)).isEmpty();
    }

    @Test
    void the_problem_names_the_field_in_the_words_asked_for_and_no_value() {
        Patient one = born("1961-04-12");
        Patient other = born("1961-04-13");

        Problem v2 = Contradictions.between(one, other, Vocabulary.HL7_V2).get(0);
        assertThat(v2.kind()).isEqualTo(Problem.Kind.CONFLICT);
        assertThat(v2.location()).isEqualTo("PID-7");
        assertThat(v2.text()).doesNotContain("1961");
        assertThat(Contradictions.between(one, other, Vocabulary.FHIR).get(0).location())
                .isEqualTo("Patient.birthDate");
    }

    private static List<Problem> between(Patient stored, Patient incoming) {
        return Contradictions.between(stored, incoming, Vocabulary.HL7_V2);
    }

    private static Patient born(String date) {
        var patient = new Patient();
        patient.getBirthDateElement().setValueAsString(date);
        return patient;
    }
}
