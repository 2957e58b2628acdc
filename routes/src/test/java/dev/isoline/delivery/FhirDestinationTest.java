package dev.isoline.delivery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.delivery.FhirPartner.Answer;
import dev.isoline.delivery.FhirPartner.Request;
import dev.isoline.delivery.Verdict.Outcome;
import dev.isoline.ledger.DeliveryTable.NewDelivery;
import java.net.http.HttpTimeoutException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** RFC 9110 ch. 15 and FHIR R4 http.html#transaction-response. */
class FhirDestinationTest {

    private FhirPartner partner;

    @BeforeEach
    void start() throws Exception {
        partner = new FhirPartner();
    }

    @AfterEach
    void stop() {
        partner.close();
    }

    @ParameterizedTest
    @CsvSource({
        "400, REFUSED",
        "401, REFUSED",
        "404, REFUSED",
        "410, REFUSED",
        "412, REFUSED",
        "422, REFUSED",
        "302, REFUSED",
        "408, RETRY",
        "409, RETRY",
        "425, RETRY",
        "429, RETRY",
        "500, RETRY",
        "502, RETRY",
        "503, RETRY",
        "504, RETRY"
    })
    void the_status_tells_whether_another_try_can_help(int status, Outcome outcome)
            throws Exception {
        assertThat(sent(status, "")).isEqualTo(new Verdict(outcome, "HTTP " + status));
    }

    @Test
    void a_stored_transaction_is_delivered() throws Exception {
        assertThat(sent(200, FhirPartner.STORED.body()))
                .isEqualTo(Verdict.delivered("HTTP 200, 1 entries"));
        assertThat(partner.requests)
                .containsExactly(new Request("{ü}", "application/fhir+json", "Bearer t"));
    }

    @Test
    void an_entry_that_was_not_stored_is_a_refusal() throws Exception {
        var body =
                """
                {"resourceType":"Bundle","type":"transaction-response","entry":[
                 {"response":{"status":"201"}},
                 {"response":{"status":"422","outcome":{"resourceType":"OperationOutcome","issue":
                  [{"severity":"error","code":"code-invalid","expression":["Patient.gender"]}]}}}]}
                """;
        assertThat(sent(200, body))
                .isEqualTo(
                        Verdict.refused("entry 1 was not stored, code-invalid at Patient.gender"));
    }

    @Test
    void an_answer_that_is_no_transaction_response_is_a_refusal() throws Exception {
        assertThat(sent(200, "<html>welcome</html>").outcome()).isEqualTo(Outcome.REFUSED);
        assertThat(sent(201, "{\"resourceType\":\"Bundle\",\"type\":\"collection\"}").outcome())
                .isEqualTo(Outcome.REFUSED);
    }

    @Test
    void the_error_names_code_and_place_but_quotes_nothing() throws Exception {
        var body =
                """
                {"resourceType":"OperationOutcome","issue":[{"severity":"error","code":"value",
                 "diagnostics":"Moor, Alda born 1950",
                 "expression":["Patient.name.where(family='Moor')"]}]}
                """;
        assertThat(sent(400, body)).isEqualTo(Verdict.refused("HTTP 400, value"));
    }

    @Test
    void a_receiver_that_does_not_answer_is_given_up_in_time() {
        partner.answers =
                body -> {
                    try {
                        Thread.sleep(5_000);
                    } catch (InterruptedException e) {
                        Thread.currentThread().interrupt();
                    }
                    return FhirPartner.STORED;
                };
        var destination =
                new FhirDestination(partner.url(), "", Duration.ofMillis(300), Optional.empty());
        assertThatThrownBy(() -> destination.send(delivery()))
                .isInstanceOf(HttpTimeoutException.class);
    }

    @Test
    void basic_credentials_are_sent_as_in_rfc_7617() {
        // RFC 7617 section 2, the example.
        assertThat(FhirDestination.basic("Aladdin:open sesame"))
                .isEqualTo("Basic QWxhZGRpbjpvcGVuIHNlc2FtZQ==");
    }

    private Verdict sent(int status, String body) throws Exception {
        partner.answers = request -> new Answer(status, body);
        var authorization = FhirDestination.bearer("t");
        return new FhirDestination(
                        partner.url(), authorization, Duration.ofSeconds(10), Optional.empty())
                .send(delivery());
    }

    private static NewDelivery delivery() {
        byte[] payload = "{ü}".getBytes(StandardCharsets.UTF_8);
        return new NewDelivery(
                "x", "o", "order", "application/fhir+json", payload, null, Instant.EPOCH);
    }
}
