package dev.isoline.fhirapi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import ca.uhn.fhir.rest.api.MethodOutcome;
import ca.uhn.fhir.rest.server.exceptions.PreconditionFailedException;
import dev.isoline.order.StableId;
import dev.isoline.resources.FhirJson;
import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.ContactPoint.ContactPointSystem;
import org.hl7.fhir.r4.model.Patient;
import org.junit.jupiter.api.Test;

/** FHIR R4, 3.1.0: create, conditional create and update, vread, paging, for patients. */
class PatientApiTest extends RunningGateway {

    @Test
    void a_patient_keeps_every_letter_of_the_name() {
        var id = client().create().resource(Sample.patient(Sample.number())).execute().getId();
        var name = client().read().resource(Patient.class).withId(id.getIdPart()).execute();
        assertThat(name.getNameFirstRep().getFamily()).startsWith("Sørensen");
        assertThat(name.getNameFirstRep().getGivenAsSingleString()).isEqualTo("Åse");
    }

    @Test
    void the_id_comes_from_the_medical_record_number_as_in_hl7_v2() {
        String number = Sample.number();
        var created = client().create().resource(Sample.patient(number)).execute();
        assertThat(created.getId().getIdPart())
                .isEqualTo(StableId.of("Patient", Sample.MRN, number));
        assertThat(created.getCreated()).isTrue();
    }

    @Test
    void a_search_posted_as_a_form_finds_only_what_meets_its_conditions() {
        String number = Sample.number();
        client().create().resource(Sample.patient(number)).execute();
        client().create().resource(Sample.patient(Sample.number())).execute();
        String[] form = {"Content-Type", "application/x-www-form-urlencoded"};
        String condition = "identifier=" + Sample.MRN + "%7C" + number;
        assertThat(send("POST", "/fhir/Patient/_search", condition, form).body())
                .contains("\"total\":1,");
        assertThat(send("POST", "/fhir/Patient/_search", "name=x", form).statusCode())
                .isGreaterThanOrEqualTo(400);
    }

    @Test
    void conditional_create_twice_gives_one_patient() {
        String number = Sample.number();
        assertThat(createIfNew(number).getCreated()).isTrue();
        MethodOutcome second = createIfNew(number);
        assertThat(second.getResponseStatusCode()).isEqualTo(200);
        assertThat(second.getId().getVersionIdPart()).isEqualTo("1");
    }

    @Test
    void conditional_creates_at_once_give_one_patient() {
        String number = Sample.number();
        var outcomes =
                IntStream.range(0, 8)
                        .mapToObj(i -> CompletableFuture.supplyAsync(() -> createIfNew(number)))
                        .toList()
                        .stream()
                        .map(CompletableFuture::join)
                        .toList();
        assertThat(outcomes).filteredOn(o -> o.getResponseStatusCode() == 201).hasSize(1);
        assertThat(outcomes).extracting(o -> o.getId().getVersionIdPart()).containsOnly("1");
    }

    @Test
    void conditional_update_creates_and_then_updates() {
        String number = Sample.number();
        assertThat(updateByIdentifier(number, "1").getResponseStatusCode()).isEqualTo(201);
        var second = updateByIdentifier(number, "2");
        assertThat(second.getResponseStatusCode()).isEqualTo(200);
        assertThat(second.getId().getVersionIdPart()).isEqualTo("2");
        var first =
                client().read()
                        .resource(Patient.class)
                        .withIdAndVersion(second.getId().getIdPart(), "1")
                        .execute();
        assertThat(first.getMeta().getVersionId()).isEqualTo("1");
    }

    @Test
    void an_update_meant_for_an_older_version_is_412() {
        String number = Sample.number();
        var id = updateByIdentifier(number, "1").getId();
        updateByIdentifier(number, "2");
        var patient = Sample.patient(number);
        patient.setId(id.withVersion("1"));
        assertThatThrownBy(
                        () ->
                                client().update()
                                        .resource(patient)
                                        .withAdditionalHeader("If-Match", "W/\"1\"")
                                        .execute())
                .isInstanceOf(PreconditionFailedException.class);
    }

    @Test
    void a_condition_that_matches_two_is_412() {
        client().create().resource(Sample.patient(Sample.number())).execute();
        client().create().resource(Sample.patient(Sample.number())).execute();
        String json = FhirJson.encode(Sample.patient(Sample.number()));
        assertThat(send("PUT", "/fhir/Patient?birthdate=1951-03-09", json).statusCode())
                .isEqualTo(412);
    }

    @Test
    void an_unknown_condition_is_refused_and_not_ignored() {
        String json = FhirJson.encode(Sample.patient(Sample.number()));
        assertThat(send("PUT", "/fhir/Patient?telecom=1", json).statusCode()).isEqualTo(422);
    }

    @Test
    void family_finds_the_beginning_whatever_case_and_accents() {
        String number = Sample.number();
        client().create().resource(Sample.patient(number)).execute();
        assertThat(total("family=s%C3%B8RENSEN-" + number)).isEqualTo(1);
        assertThat(total("family:exact=S%C3%B8rensen-" + number)).isEqualTo(1);
        assertThat(total("family:exact=S%C3%B8rensen")).isZero();
        assertThat(send("GET", "/fhir/Patient?family:contains=s", null).statusCode())
                .isEqualTo(422);
    }

    @Test
    void repeated_parameters_must_all_hold_and_commas_are_alternatives() {
        String one = Sample.number();
        String two = Sample.number();
        client().create().resource(Sample.patient(one)).execute();
        client().create().resource(Sample.patient(two)).execute();
        assertThat(total("identifier=" + one + "," + two)).isEqualTo(2);
        assertThat(total("identifier=" + one + "&identifier=" + two)).isZero();
        assertThat(total("identifier=" + one + "&birthdate=1951")).isEqualTo(1);
    }

    @Test
    void pages_follow_each_other_until_all_are_seen() {
        String first = Sample.number();
        IntStream.range(0, 5)
                .forEach(
                        i -> {
                            var patient = Sample.patient(Sample.number());
                            patient.getNameFirstRep().setFamily("Page" + first);
                            client().create().resource(patient).execute();
                        });
        Bundle page =
                (Bundle)
                        FhirJson.decode(
                                send("GET", "/fhir/Patient?family=page" + first + "&_count=2", null)
                                        .body());
        int seen = page.getEntry().size();
        assertThat(page.getTotal()).isEqualTo(5);
        while (page.getLink(Bundle.LINK_NEXT) != null) {
            page = client().loadPage().next(page).execute();
            seen += page.getEntry().size();
        }
        assertThat(seen).isEqualTo(5);
    }

    private int total(String query) {
        var response = send("GET", "/fhir/Patient?" + query, null);
        return ((Bundle) FhirJson.decode(response.body())).getTotal();
    }

    private MethodOutcome createIfNew(String number) {
        return client().create()
                .resource(Sample.patient(number))
                .conditionalByUrl("Patient?identifier=" + Sample.MRN + "|" + number)
                .execute();
    }

    @Test
    void an_update_that_changes_nothing_makes_no_version() {
        String number = Sample.number();
        updateByIdentifier(number, "1");
        assertThat(updateByIdentifier(number, "1").getId().getVersionIdPart()).isEqualTo("1");
    }

    private MethodOutcome updateByIdentifier(String number, String phone) {
        var patient = Sample.patient(number);
        patient.addTelecom().setSystem(ContactPointSystem.PHONE).setValue(phone);
        return client().update()
                .resource(patient)
                .conditionalByUrl("Patient?identifier=" + Sample.MRN + "|" + number)
                .execute();
    }
}
