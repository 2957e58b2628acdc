package dev.isoline.fhirapi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import ca.uhn.fhir.rest.server.exceptions.UnprocessableEntityException;
import dev.isoline.order.StableId;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.HTTPVerb;
import org.hl7.fhir.r4.model.Coverage;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.junit.jupiter.api.Test;

/** FHIR R4, 3.1.0.11: transaction. */
class TransactionTest extends RunningGateway {

    @Test
    void an_order_with_patient_and_insurance_is_stored_and_its_references_resolved() {
        String number = Sample.number();
        Bundle response = client().transaction().withBundle(Sample.transaction(number)).execute();

        assertThat(response.getType()).isEqualTo(Bundle.BundleType.TRANSACTIONRESPONSE);
        assertThat(response.getEntry())
                .extracting(e -> e.getResponse().getStatus())
                .containsOnly("201 Created");
        assertThat(response.getEntryFirstRep().getResponse().getEtag()).isEqualTo("W/\"1\"");
        String patient = StableId.of("Patient", Sample.MRN, number);
        String orderId = StableId.of("ServiceRequest", Sample.ORDERS, number);
        var order = client().read().resource(ServiceRequest.class).withId(orderId).execute();
        assertThat(order.getSubject().getReference()).isEqualTo("Patient/" + patient);
        var coverage =
                client().read()
                        .resource(Coverage.class)
                        .withUrl(order.getInsuranceFirstRep().getReference())
                        .execute();
        assertThat(coverage.getBeneficiary().getReference()).isEqualTo("Patient/" + patient);
        assertThat(coverage.getPayorFirstRep().getReference()).startsWith("Organization/");
    }

    @Test
    void the_same_patient_again_is_updated_by_its_identifier() {
        String number = Sample.number();
        client().transaction().withBundle(Sample.transaction(number)).execute();
        var again = new Bundle().setType(Bundle.BundleType.TRANSACTION);
        var patient = Sample.patient(number);
        patient.addTelecom()
                .setSystem(org.hl7.fhir.r4.model.ContactPoint.ContactPointSystem.PHONE)
                .setValue("1");
        Sample.add(
                again,
                "urn:uuid:" + Sample.uuid(1),
                patient,
                HTTPVerb.PUT,
                "Patient?identifier=" + Sample.MRN + "|" + number);

        var response = client().transaction().withBundle(again).execute();

        assertThat(response.getEntryFirstRep().getResponse().getStatus()).startsWith("200");
        assertThat(response.getEntryFirstRep().getResponse().getEtag()).isEqualTo("W/\"2\"");
    }

    @Test
    void nothing_is_stored_when_one_entry_is_refused() {
        String number = Sample.number();
        Bundle bundle = Sample.transaction(number);
        ((ServiceRequest) bundle.getEntry().get(3).getResource())
                .setSubject(new org.hl7.fhir.r4.model.Reference("Patient/nobody"));

        assertThatThrownBy(() -> client().transaction().withBundle(bundle).execute())
                .isInstanceOfSatisfying(
                        UnprocessableEntityException.class,
                        e ->
                                assertThat(
                                                ((OperationOutcome) e.getOperationOutcome())
                                                        .getIssueFirstRep()
                                                        .getExpression()
                                                        .get(0)
                                                        .getValue())
                                        .isEqualTo("Bundle.entry[3].resource.subject"));
        assertThat(found(number)).isZero();
    }

    @Test
    void if_none_exist_finds_the_patient_that_is_there() {
        String number = Sample.number();
        client().create().resource(Sample.patient(number)).execute();
        Bundle bundle = Sample.transaction(number);
        bundle.getEntry()
                .get(0)
                .getRequest()
                .setMethod(HTTPVerb.POST)
                .setUrl("Patient")
                .setIfNoneExist("identifier=" + Sample.MRN + "|" + number);

        var response = client().transaction().withBundle(bundle).execute();

        assertThat(response.getEntryFirstRep().getResponse().getStatus()).startsWith("200");
        assertThat(response.getEntryFirstRep().getResponse().getEtag()).isEqualTo("W/\"1\"");
    }

    @Test
    void an_order_on_hold_is_told_in_its_entry() {
        Bundle bundle = Sample.transaction(Sample.number());
        ((ServiceRequest) bundle.getEntry().get(3).getResource()).setInsurance(null);

        var response = client().transaction().withBundle(bundle).execute();

        var outcome = (OperationOutcome) response.getEntry().get(3).getResponse().getOutcome();
        assertThat(outcome.getIssue())
                .extracting(issue -> issue.getExpression().get(0).getValue())
                .contains("Coverage.class", "ServiceRequest.occurrence");
        assertThat(outcome.getIssueFirstRep().getSeverity())
                .isEqualTo(OperationOutcome.IssueSeverity.WARNING);
    }

    @Test
    void a_get_entry_sees_what_the_transaction_wrote() {
        String number = Sample.number();
        Bundle bundle = Sample.transaction(number);
        bundle.addEntry()
                .getRequest()
                .setMethod(HTTPVerb.GET)
                .setUrl("Patient?identifier=" + Sample.MRN + "|" + number);

        var response = client().transaction().withBundle(bundle).execute();

        var found = (Bundle) response.getEntry().get(4).getResource();
        assertThat(found.getTotal()).isEqualTo(1);
    }

    @Test
    void a_conditional_reference_leads_to_the_patient() {
        String number = Sample.number();
        client().create().resource(Sample.patient(number)).execute();
        var bundle = new Bundle().setType(Bundle.BundleType.TRANSACTION);
        var order = Sample.order(number, "Patient?identifier=" + Sample.MRN + "|" + number);
        Sample.add(bundle, "urn:uuid:" + Sample.uuid(1), order, HTTPVerb.POST, "ServiceRequest");

        client().transaction().withBundle(bundle).execute();

        String id = StableId.of("ServiceRequest", Sample.ORDERS, number);
        var stored = client().read().resource(ServiceRequest.class).withId(id).execute();
        assertThat(stored.getSubject().getReference())
                .isEqualTo("Patient/" + StableId.of("Patient", Sample.MRN, number));
    }

    @Test
    void a_big_bundle_is_carried_out_as_one() {
        var bundle = new Bundle().setType(Bundle.BundleType.TRANSACTION);
        for (int i = 0; i < 100; i++) {
            Sample.add(
                    bundle,
                    "urn:uuid:" + Sample.uuid(i),
                    Sample.patient(Sample.number()),
                    HTTPVerb.POST,
                    "Patient");
        }
        var response = client().transaction().withBundle(bundle).execute();
        assertThat(response.getEntry()).hasSize(100);
    }

    @Test
    void what_is_not_declared_for_a_type_is_refused_in_a_transaction_too() {
        var task = new org.hl7.fhir.r4.model.Task();
        task.setStatus(org.hl7.fhir.r4.model.Task.TaskStatus.REQUESTED);
        task.setIntent(org.hl7.fhir.r4.model.Task.TaskIntent.ORDER);
        assertThat(refusal(task, HTTPVerb.POST, "Task"))
                .isEqualTo("Bundle.entry[0].request.method");
        var order = Sample.order(Sample.number(), "Patient/nobody");
        assertThat(refusal(task, HTTPVerb.PUT, "Task?identifier=1"))
                .isEqualTo("Bundle.entry[0].request.method");
        assertThat(refusal(order, HTTPVerb.DELETE, "ServiceRequest/1"))
                .isEqualTo("Bundle.entry[0].request.method");
        assertThat(refusal(Sample.patient("1"), HTTPVerb.POST, "Coverage"))
                .isEqualTo("Bundle.entry[0].request.url");
    }

    @Test
    void a_patient_on_another_server_is_nobody_here() {
        var order = Sample.order(Sample.number(), "https://harrow-bay.example/fhir/Patient/1");
        assertThat(refusal(order, HTTPVerb.POST, "ServiceRequest"))
                .isEqualTo("Bundle.entry[0].resource.subject");
    }

    @Test
    void two_entries_about_one_patient_are_refused() {
        String number = Sample.number();
        var bundle = new Bundle().setType(Bundle.BundleType.TRANSACTION);
        String query = "Patient?identifier=" + Sample.MRN + "|" + number;
        Sample.add(
                bundle, "urn:uuid:" + Sample.uuid(1), Sample.patient(number), HTTPVerb.PUT, query);
        Sample.add(
                bundle, "urn:uuid:" + Sample.uuid(2), Sample.patient(number), HTTPVerb.PUT, query);
        var response = send("POST", "/fhir", dev.isoline.resources.FhirJson.encode(bundle));
        assertThat(response.statusCode()).as(response.body()).isEqualTo(400);
        assertThat(found(number)).isZero();
    }

    private String refusal(org.hl7.fhir.r4.model.Resource resource, HTTPVerb method, String url) {
        var bundle = new Bundle().setType(Bundle.BundleType.TRANSACTION);
        Sample.add(bundle, "urn:uuid:" + Sample.uuid(1), resource, method, url);
        var response = send("POST", "/fhir", dev.isoline.resources.FhirJson.encode(bundle));
        assertThat(response.statusCode()).as(response.body()).isEqualTo(422);
        return outcome(response).getIssueFirstRep().getExpression().get(0).getValue();
    }

    private int found(String number) {
        return client().search()
                .forResource(Patient.class)
                .where(Patient.IDENTIFIER.exactly().systemAndIdentifier(Sample.MRN, number))
                .returnBundle(Bundle.class)
                .execute()
                .getTotal();
    }
}
