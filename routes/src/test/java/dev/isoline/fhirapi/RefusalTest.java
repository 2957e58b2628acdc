package dev.isoline.fhirapi;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.resources.FhirJson;
import java.net.http.HttpResponse;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.junit.jupiter.api.Test;

/** What is refused, with which status, and that the answer names the place but quotes no value. */
class RefusalTest extends RunningGateway {

    @Test
    void malformed_json_is_400() {
        var response =
                send(
                        "POST",
                        "/fhir/Patient",
                        "{\"resourceType\":\"Patient\",\"name\":[{\"family\":\"Okonkwo\"");
        assertThat(response.statusCode()).isEqualTo(400);
        assertThat(outcome(response).hasIssue()).isTrue();
        assertThat(response.body()).doesNotContain("Okonkwo");
    }

    @Test
    void a_body_that_is_not_json_at_all_is_400() {
        for (String body : java.util.List.of("", "Okonkwo", "[]", "{}", "null", "{\"a\":}")) {
            var response = send("POST", "/fhir/Patient", body);
            assertThat(response.statusCode()).as(body).isEqualTo(400);
            assertThat(response.body()).doesNotContain("Okonkwo");
        }
    }

    @Test
    void malformed_xml_is_400_and_good_xml_is_taken() {
        var patient = Sample.patient(Sample.number());
        String xml = FhirJson.CONTEXT.newXmlParser().encodeResourceToString(patient);
        String type = "application/fhir+xml";
        assertThat(sendXml(xml.substring(0, xml.length() - 12), type).statusCode()).isEqualTo(400);
        assertThat(sendXml(xml.replace("female", "lady"), type).statusCode()).isEqualTo(422);
        assertThat(sendXml(xml.replace("female", "lady"), type).body()).doesNotContain("lady");
        assertThat(sendXml(xml, type).statusCode()).isEqualTo(201);
    }

    private HttpResponse<String> sendXml(String body, String type) {
        return send("POST", "/fhir/Patient", body, "Content-Type", type);
    }

    @Test
    void an_unknown_type_is_404() {
        assertThat(send("POST", "/fhir/Horse", "{\"resourceType\":\"Horse\"}").statusCode())
                .isEqualTo(404);
    }

    @Test
    void a_body_of_another_type_than_the_address_is_refused() {
        var response = send("POST", "/fhir/Patient", "{\"resourceType\":\"Practitioner\"}");
        assertThat(response.statusCode()).isBetween(400, 422);
    }

    @Test
    void a_missing_mandatory_element_is_422_at_its_path() {
        var response =
                send(
                        "POST",
                        "/fhir/Coverage",
                        "{\"resourceType\":\"Coverage\",\"status\":\"active\"}");
        assertThat(response.statusCode()).isEqualTo(422);
        assertThat(outcome(response).getIssue())
                .extracting(i -> i.getDiagnostics())
                .anyMatch(d -> d.contains("Coverage.beneficiary"))
                .anyMatch(d -> d.contains("Coverage.payor"));
        assertThat(outcome(response).getIssueFirstRep().getCode()).isEqualTo(IssueType.REQUIRED);
    }

    @Test
    void a_code_outside_a_required_binding_is_422_at_its_path() {
        var response = send("POST", "/fhir/Patient", json("1").replace("\"female\"", "\"lady\""));
        assertThat(response.statusCode()).isEqualTo(422);
        assertThat(paths(response)).contains("Patient.gender");
        assertThat(response.body()).doesNotContain("lady");
    }

    @Test
    void in_a_bundle_the_path_leads_through_the_entry() {
        String bundle =
                FhirJson.encode(Sample.transaction(Sample.number()))
                        .replace("\"female\"", "\"lady\"");
        var response = send("POST", "/fhir", bundle);
        assertThat(response.statusCode()).isEqualTo(422);
        assertThat(paths(response)).contains("Bundle.entry[0].resource.gender");
    }

    @Test
    void an_element_that_does_not_exist_is_refused() {
        var response = send("POST", "/fhir/Patient", json("1").replace("\"gender\"", "\"sex\""));
        assertThat(response.statusCode()).isEqualTo(422);
        assertThat(paths(response)).anyMatch(p -> p.startsWith("Patient"));
    }

    @Test
    void a_date_that_is_none_is_refused_without_being_quoted() {
        var response = send("POST", "/fhir/Patient", json("1").replace("1951-03-09", "1951-13-45"));
        assertThat(response.statusCode()).isEqualTo(422);
        assertThat(paths(response)).contains("Patient.birthDate");
        assertThat(response.body()).doesNotContain("1951-13");
    }

    @Test
    void a_local_code_system_is_no_error() {
        String number = Sample.number();
        client().create().resource(Sample.patient(number)).execute();
        var order = Sample.order(number, "Patient?identifier=x");
        order.setSubject(null);
        order.getSubject().getIdentifier().setSystem(Sample.MRN).setValue(number);
        order.getCode().addCoding().setSystem("https://harrow-bay.example/codes").setCode("ECG7");
        var response = send("POST", "/fhir/ServiceRequest", FhirJson.encode(order));
        assertThat(response.statusCode()).as(response.body()).isEqualTo(201);
    }

    @Test
    void an_order_for_a_patient_nobody_knows_is_refused_at_subject() {
        var order = Sample.order(Sample.number(), "Patient/nobody");
        var response = send("POST", "/fhir/ServiceRequest", FhirJson.encode(order));
        assertThat(response.statusCode()).isEqualTo(422);
        assertThat(paths(response)).containsExactly("ServiceRequest.subject");
        assertThat(outcome(response).getIssueFirstRep().getCode()).isEqualTo(IssueType.NOTFOUND);
    }

    @Test
    void a_patient_whose_identifier_is_known_is_a_duplicate() {
        String number = Sample.number();
        client().create().resource(Sample.patient(number)).execute();
        var response = send("POST", "/fhir/Patient", json(number));
        assertThat(response.statusCode()).isEqualTo(409);
        assertThat(outcome(response).getIssueFirstRep().getCode()).isEqualTo(IssueType.DUPLICATE);
        assertThat(outcome(response).getIssueFirstRep().getDiagnostics()).contains("If-None-Exist");
        assertThat(response.body()).doesNotContain(number);
    }

    @Test
    void a_patient_without_an_identifier_is_refused() {
        var patient = Sample.patient("1");
        patient.setIdentifier(null);
        var response = send("POST", "/fhir/Patient", FhirJson.encode(patient));
        assertThat(response.statusCode()).isEqualTo(422);
        assertThat(paths(response)).containsExactly("Patient.identifier");
    }

    @Test
    void a_refused_body_is_stored_as_it_came_with_its_answer() {
        String body = "{\"resourceType\":\"Patient\",\"gender\":\"øl\"}";
        long before = lastMessage();
        send("POST", "/fhir/Patient", body);
        var stored = ledger.read(t -> t.messages().byId(before + 1)).orElseThrow();
        assertThat(new String(stored.message().raw(), java.nio.charset.StandardCharsets.UTF_8))
                .isEqualTo(body);
        assertThat(stored.message().channel()).isEqualTo("fhir");
        assertThat(stored.message().sender()).isEqualTo("sable-point");
        assertThat(stored.outcome()).isEqualTo("422");
        assertThat(new String(stored.answer(), java.nio.charset.StandardCharsets.UTF_8))
                .contains("OperationOutcome");
    }

    @Test
    void an_update_of_an_id_that_was_never_given_is_405() {
        var response =
                send(
                        "PUT",
                        "/fhir/Patient/mine",
                        json("1").replaceFirst("\\{", "{\"id\":\"mine\","));
        assertThat(response.statusCode()).isEqualTo(405);
    }

    private long lastMessage() {
        client().create().resource(Sample.patient(Sample.number())).execute();
        long id = 0;
        while (messageExists(id + 1)) {
            id++;
        }
        return id;
    }

    private boolean messageExists(long id) {
        return ledger.read(t -> t.messages().byId(id)).isPresent();
    }

    private static String json(String number) {
        return FhirJson.encode(Sample.patient(number));
    }

    private static java.util.List<String> paths(HttpResponse<String> response) {
        return outcome(response).getIssue().stream()
                .flatMap(i -> i.getExpression().stream())
                .map(e -> e.getValue())
                .toList();
    }
}
