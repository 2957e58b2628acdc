package dev.isoline.fhirapi;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.resources.FhirJson;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.junit.jupiter.api.Test;

/** HTTP Basic (RFC 7617) on everything but the health probes. */
class AccessTest extends RunningGateway {

    @Test
    void without_a_credential_the_answer_is_401_with_an_operation_outcome() {
        var response = sendAs(null, "GET", "/fhir/Patient", null);
        assertThat(response.statusCode()).isEqualTo(401);
        assertThat(response.headers().firstValue("WWW-Authenticate"))
                .get()
                .asString()
                .startsWith("Basic");
        assertThat(outcome(response).getIssueFirstRep().getCode()).isEqualTo(IssueType.LOGIN);
    }

    @Test
    void a_wrong_token_an_unknown_name_and_an_empty_token_are_401() {
        String right = token("sable-point");
        for (String wrong :
                new String[] {
                    basic("sable-point", right.substring(1)),
                    basic("sable-point", ""),
                    basic("nobody", right),
                    basic("nobody", ""),
                    basic("operator", right),
                    "Basic !",
                    "Bearer " + right
                }) {
            assertThat(sendAs(wrong, "GET", "/fhir/Patient", null).statusCode()).isEqualTo(401);
        }
    }

    @Test
    void operator_client_and_sender_get_in() {
        for (String name : new String[] {"operator", "recorder-station", "sable-point"}) {
            String right = basic(name, token(name));
            assertThat(sendAs(right, "GET", "/fhir/Patient?_count=1", null).statusCode())
                    .isEqualTo(200);
        }
    }

    @Test
    void health_is_open_and_nothing_else() {
        assertThat(sendAs(null, "GET", "/actuator/health/readiness", null).statusCode())
                .isEqualTo(200);
        for (String path : new String[] {"/actuator", "/actuator/env", "/", "/fhir/metadata"}) {
            assertThat(sendAs(null, "GET", path, null).statusCode()).as(path).isEqualTo(401);
        }
    }

    @Test
    void no_session_is_kept() {
        var response = send("GET", "/fhir/Patient?_count=1", null);
        assertThat(response.headers().firstValue("Set-Cookie")).isEmpty();
    }

    @Test
    void a_body_over_the_limit_is_413() {
        String body = "x".repeat(RawRequestFilter.LARGEST_BODY + 1);
        var response = send("POST", "/fhir/Patient", body);
        assertThat(response.statusCode()).isEqualTo(413);
        assertThat(outcome(response).getIssueFirstRep().getCode()).isEqualTo(IssueType.TOOLONG);
    }

    @Test
    void an_order_on_hold_is_told_to_who_prefers_the_outcome() {
        String number = Sample.number();
        var patient = client().create().resource(Sample.patient(number)).execute().getId();
        String order = FhirJson.encode(Sample.order(number, "Patient/" + patient.getIdPart()));

        var response =
                send("POST", "/fhir/ServiceRequest", order, "Prefer", "return=OperationOutcome");

        assertThat(response.statusCode()).isEqualTo(201);
        assertThat(outcome(response).getIssueFirstRep().getExpression().get(0).getValue())
                .isEqualTo("Coverage.payor");
        assertThat(outcome(response).getIssueFirstRep().getSeverity().toCode())
                .isEqualTo("warning");
    }
}
