package dev.isoline.fhirapi;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The sample that warms the validator is one the validator accepts. */
class FhirValidationTest {

    @Test
    void the_warm_up_sample_has_no_fault() {
        assertThat(new FhirValidation().warmUp().getIssue()).isEmpty();
    }

    @Test
    void values_of_the_body_do_not_appear_in_what_is_said_about_it() {
        var scrub =
                Scrub.of(
                        "{\"family\":\"Oko\\u006ekwo\",\"given\":[\"Ada\"],\"url\":\"http://hl7.org/fhir/x\"}");
        assertThat(
                        scrub.text(
                                "Okonkwo: the value 'Ada' of Patient.name is not in http://hl7.org/fhir/x"))
                .isEqualTo("…: the value '…' of Patient.name is not in http://hl7.org/fhir/x");
    }
}
