package dev.isoline.conformance.validator;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class FhirJudgeTest {

    @Test
    void a_right_resource_passes_although_snomed_ct_is_not_at_hand() {
        String json =
                """
                {"resourceType":"ServiceRequest","status":"active","intent":"order",
                 "code":{"coding":[{"system":"http://snomed.info/sct","code":"427047002"}]},
                 "subject":{"display":"nobody"}}""";
        assertThat(FhirJudge.one().judge("s.json", json).findings()).isEmpty();
    }

    @Test
    void a_code_outside_a_required_binding_is_an_error_at_its_fhirpath() {
        // FHIR R4 ServiceRequest.status: required binding request-status
        String json =
                """
                {"resourceType":"ServiceRequest","status":"ordered","intent":"order",
                 "subject":{"display":"nobody"}}""";
        assertThat(FhirJudge.one().judge("s.json", json).findings())
                .anyMatch(f -> f.isError() && f.place().contains("ServiceRequest.status"));
    }

    @Test
    void a_required_element_left_out_is_an_error() {
        String json =
                "{\"resourceType\":\"ServiceRequest\",\"status\":\"active\",\"intent\":\"order\"}";
        assertThat(FhirJudge.one().judge("s.json", json).failed()).isTrue();
    }

    @Test
    void json_that_is_no_resource_fails() {
        assertThat(FhirJudge.one().judge("s.json", "{\"a\":1}").failed()).isTrue();
        assertThat(FhirJudge.one().judge("s.json", "{").failed()).isTrue();
    }
}
