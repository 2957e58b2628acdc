package dev.isoline.gateway;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.ledger.DeliveryTable.DeliveryRow;
import dev.isoline.order.OrderState;
import dev.isoline.resources.FhirJson;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.DateType;
import org.hl7.fhir.r4.model.Enumerations.AdministrativeGender;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.hl7.fhir.r4.model.Organization;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import org.hl7.fhir.r4.model.Task;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** docs/flows/01-order-in.md and 02-order-in-fhir.md, told over MLLP and HTTP. */
class OrderJourneyTest extends AssembledGateway {

    private static final String[] INSURANCE_BY_FIELD = {
        "IN1-4 101", "IN1-8 101", "IN1-36 101", "IN1-16 101", "IN1-17 101", "IN1-19 101"
    };

    private final Clinic clinic = Clinic.patient();

    // Complete, held, released

    @Test
    void a_complete_order_is_accepted_and_due_once_to_everyone_concerned() {
        assertThat(mllp(clinic.order()).code()).isEqualTo("AA");
        assertThat(order(clinic.placer()).state()).isEqualTo(OrderState.READY);
        assertThat(due(clinic.placer()))
                .containsExactlyInAnyOrder("tern-street order", "harrow-bay-mllp status");
    }

    @Test
    void an_order_without_insurance_is_held_and_its_sender_told_by_field() {
        var answer = mllp(clinic.orderWithoutInsurance());
        assertThat(answer.code()).isEqualTo("AA");
        assertThat(answer.errors()).isEmpty();
        assertThat(answer.warnings()).containsExactlyInAnyOrder(INSURANCE_BY_FIELD);
        assertThat(order(clinic.placer()).state()).isEqualTo(OrderState.ON_HOLD);
        assertThat(due(clinic.placer())).containsExactly("harrow-bay-mllp status");
        assertThat(serviceRequest().getStatus()).isEqualTo(ServiceRequestStatus.ONHOLD);
    }

    @Test
    void an_adt_with_the_insurance_releases_it() {
        mllp(clinic.orderWithoutInsurance());
        assertThat(mllp(clinic.adt()).code()).isEqualTo("AA");
        isReleased();
        assertThat(due(clinic.placer()))
                .containsExactlyInAnyOrder(
                        "harrow-bay-mllp status", "tern-street order", "harrow-bay-mllp status");
    }

    @Test
    void a_fhir_coverage_for_a_patient_known_by_hl7_v2_releases_it() {
        mllp(clinic.orderWithoutInsurance());
        var payor = new Organization().setName("Plover Mutual");
        String insurer = created(fhirAs("sable-point", "POST", "/Organization", payor));
        var coverage =
                clinic.coverage(
                        "Patient/" + order(clinic.placer()).patientId(), "Organization/" + insurer);
        created(fhirAs("sable-point", "POST", "/Coverage", coverage));
        isReleased();
        assertThat(serviceRequest().getInsurance()).hasSize(1);
    }

    // HL7 v2 and FHIR meet

    @Test
    void a_patient_created_by_fhir_is_the_patient_of_an_hl7_v2_order() {
        String patient = created(fhirAs("sable-point", "POST", "/Patient", clinic.person()));
        assertThat(mllp(clinic.order()).code()).isEqualTo("AA");
        assertThat(order(clinic.placer()).patientId()).isEqualTo(patient);
        assertThat(patients()).hasSize(1);
    }

    @Test
    void a_patient_known_by_hl7_v2_is_the_patient_of_a_fhir_order() {
        mllp(clinic.adt());
        var later = clinic.anotherOrder();
        var response = transaction(later.withoutInsurance());
        assertThat(warnings(response)).isEmpty();
        assertThat(patients()).hasSize(1);
        assertThat(order(later.placer()).patientId())
                .isEqualTo(patients().get(0).getIdElement().getIdPart());
        assertThat(order(later.placer()).state()).isEqualTo(OrderState.READY);
        assertThat(due(later.placer()))
                .containsExactlyInAnyOrder("tern-street order", "sable-point-fhir status");
    }

    @Test
    void an_order_refers_to_the_patient_it_was_matched_with_by_a_second_identifier() {
        var person = clinic.person();
        var elsewhere = person.getIdentifierFirstRep().copy().setSystem("urn:oid:2.999.77");
        person.getIdentifier().add(0, elsewhere);
        String known = created(fhirAs("sable-point", "POST", "/Patient", person));
        mllp(clinic.order());
        assertThat(order(clinic.placer()).patientId()).isEqualTo(known);
        assertThat(serviceRequest().getSubject().getReference()).isEqualTo("Patient/" + known);
    }

    @Test
    void a_fhir_order_without_insurance_is_told_by_fhir_path_and_released_by_an_adt() {
        var response = transaction(clinic.withoutInsurance());
        assertThat(warnings(response))
                .contains("Coverage.payor", "Coverage.subscriberId", "Coverage.relationship");
        assertThat(order(clinic.placer()).state()).isEqualTo(OrderState.ON_HOLD);
        mllp(clinic.adt());
        isReleased();
    }

    /** HL7 v2.5.1 ch. 2.5.3: a field that is not there leaves what is known alone. */
    @Test
    void an_adt_that_is_silent_about_birth_date_and_sex_leaves_them() {
        mllp(clinic.order());
        assertThat(mllp(clinic.adt().replace("19590713|F", "|")).code()).isEqualTo("AA");
        Patient known = search(Patient.class, "_id=" + order(clinic.placer()).patientId()).get(0);
        assertThat(known.getBirthDateElement().asStringValue()).isEqualTo("1959-07-13");
        assertThat(known.getGender()).isEqualTo(AdministrativeGender.FEMALE);
    }

    @Test
    void the_same_number_of_another_authority_is_another_patient() {
        mllp(clinic.order());
        var other = clinic.anotherOrder();
        mllp(other.order().replace("^^^HARROWBAY^MR", "^^^2.999.77&2.999.77&ISO^MR"));
        assertThat(order(other.placer()).patientId())
                .isNotEqualTo(order(clinic.placer()).patientId());
    }

    // Contradictions

    @Nested
    class Birth_date_or_sex_that_contradicts {

        @Test
        void holds_an_order_and_changes_nothing_that_is_known() {
            mllp(clinic.order());
            var later = clinic.anotherOrder();
            var answer = mllp(later.order().replace("19590713|F", "19590714|M"));
            assertThat(answer.code()).isEqualTo("AA");
            assertThat(answer.warnings()).containsExactlyInAnyOrder("PID-7 207", "PID-8 207");
            assertThat(order(later.placer()).state()).isEqualTo(OrderState.ON_HOLD);
            isUnchanged();
        }

        @Test
        void refuses_an_adt() {
            mllp(clinic.order());
            var answer = mllp(clinic.adt().replace("19590713|F", "19590714|F"));
            assertThat(answer.code()).isEqualTo("AE");
            assertThat(answer.errors()).containsExactly("PID-7 207");
            isUnchanged();
        }

        @Test
        void holds_the_order_of_a_fhir_transaction_with_a_warning() {
            mllp(clinic.order());
            var later = clinic.anotherOrder();
            var other = later.person().setBirthDateElement(new DateType("1959-07-14"));
            assertThat(warnings(transaction(later.withoutInsurance(other))))
                    .contains("Patient.birthDate");
            assertThat(order(later.placer()).state()).isEqualTo(OrderState.ON_HOLD);
            isUnchanged();
        }

        @Test
        void refuses_an_update_of_the_patient_by_a_clinic() {
            mllp(clinic.order());
            var response = update("sable-point", "1959-07-14");
            assertThat(response.statusCode()).isEqualTo(422);
            var outcome = (OperationOutcome) FhirJson.decode(response.body());
            assertThat(outcome.getIssueFirstRep().getExpression())
                    .extracting(e -> e.getValue())
                    .containsExactly("Patient.birthDate");
            isUnchanged();
        }

        @Test
        void stays_until_the_operator_settles_it() {
            mllp(clinic.order());
            var later = clinic.anotherOrder();
            mllp(later.order().replace("19590713|F", "19590714|F"));
            mllp(clinic.adt());
            assertThat(order(later.placer()).state()).isEqualTo(OrderState.ON_HOLD);
            assertThat(update("operator", "1959-07-14").statusCode()).isEqualTo(200);
            assertThat(order(later.placer()).state()).isEqualTo(OrderState.READY);
        }

        private java.net.http.HttpResponse<String> update(String client, String birthDate) {
            var patient = patients().get(0);
            patient.setBirthDateElement(new DateType(birthDate));
            return fhirAs(client, "PUT", "/Patient/" + patient.getIdElement().getIdPart(), patient);
        }

        private void isUnchanged() {
            var patient = patients().get(0);
            assertThat(patient.getBirthDateElement().getValueAsString()).isEqualTo("1959-07-13");
            assertThat(patient.getGender()).isEqualTo(AdministrativeGender.FEMALE);
        }
    }

    // Order control

    @Test
    void a_cancel_revokes_the_order_and_tells_everyone_who_got_it() {
        mllp(clinic.order());
        assertThat(mllp(clinic.order("CA")).code()).isEqualTo("AA");
        assertThat(order(clinic.placer()).state()).isEqualTo(OrderState.CANCELLED);
        assertThat(serviceRequest().getStatus()).isEqualTo(ServiceRequestStatus.REVOKED);
        assertThat(due(clinic.placer()))
                .containsExactlyInAnyOrder(
                        "tern-street order",
                        "harrow-bay-mllp status",
                        "tern-street status",
                        "harrow-bay-mllp status");
    }

    @Test
    void a_cancel_of_an_unknown_order_is_refused_at_orc_2() {
        mllp(clinic.adt());
        var answer = mllp(clinic.order("CA"));
        assertThat(answer.code()).isEqualTo("AE");
        assertThat(answer.errors()).containsExactly("ORC-2 204");
    }

    @Test
    void a_cancel_that_comes_too_late_is_refused_at_orc_1() {
        mllp(clinic.order());
        var ready = order(clinic.placer());
        ledger.write(
                        tables -> {
                            var reviewed = ready.with(OrderState.REVIEW, ready.updatedAt());
                            tables.orders().update(reviewed);
                            return null;
                        })
                .join();
        var answer = mllp(clinic.order("CA"));
        assertThat(answer.code()).isEqualTo("AE");
        assertThat(answer.errors()).containsExactly("ORC-1 207");
        assertThat(order(clinic.placer()).state()).isEqualTo(OrderState.REVIEW);
    }

    @Test
    void a_service_request_set_to_revoked_cancels_the_order() {
        mllp(clinic.order());
        var request = serviceRequest().setStatus(ServiceRequestStatus.REVOKED);
        var response =
                fhirAs(
                        "sable-point",
                        "PUT",
                        "/ServiceRequest/" + request.getIdElement().getIdPart(),
                        request);
        assertThat(response.statusCode()).as(response.body()).isEqualTo(200);
        assertThat(order(clinic.placer()).state()).isEqualTo(OrderState.CANCELLED);
        assertThat(serviceRequest().getStatus()).isEqualTo(ServiceRequestStatus.REVOKED);
    }

    @Test
    void a_service_request_that_was_passed_on_cannot_be_changed() {
        mllp(clinic.order());
        var request = serviceRequest().setPatientInstruction("Keep it dry.");
        var response =
                fhirAs(
                        "sable-point",
                        "PUT",
                        "/ServiceRequest/" + request.getIdElement().getIdPart(),
                        request);
        assertThat(response.statusCode()).isEqualTo(422);
        assertThat(serviceRequest().hasPatientInstruction()).isFalse();
    }

    @Test
    void a_service_request_on_hold_may_change_but_not_its_state_and_numbers() {
        transaction(clinic.withoutInsurance());
        var request = serviceRequest();
        request.getIdentifier().removeIf(i -> !i.getType().hasCoding(Clinic.TYPES, "PLAC"));
        request.setPatientInstruction("Keep it dry.").setStatus(ServiceRequestStatus.ACTIVE);
        assertThat(updated(request)).isEqualTo(200);
        assertThat(serviceRequest().getPatientInstruction()).isEqualTo("Keep it dry.");
        assertThat(serviceRequest().getStatus()).isEqualTo(ServiceRequestStatus.ONHOLD);
        assertThat(serviceRequest().getIdentifier())
                .extracting(i -> i.getValue())
                .contains(order(clinic.placer()).filler(), order(clinic.placer()).accession());
    }

    @Test
    void a_service_request_on_hold_cannot_become_another_patient_s() {
        transaction(clinic.withoutInsurance());
        var other = Clinic.patient();
        mllp(other.adt());
        var request = serviceRequest();
        String patient =
                search(Patient.class, query(other.mrn())).get(0).getIdElement().getIdPart();
        request.getSubject().setReference("Patient/" + patient);
        assertThat(updated(request)).isEqualTo(422);
        assertThat(serviceRequest().getSubject().getReference()).doesNotContain(patient);
    }

    private int updated(ServiceRequest request) {
        String path = "/ServiceRequest/" + request.getIdElement().getIdPart();
        return fhirAs("sable-point", "PUT", path, request).statusCode();
    }

    @Test
    void a_placer_order_number_in_use_is_refused_at_orc_2() {
        mllp(clinic.order());
        var answer = mllp(clinic.order().replace("54^Ambulatory ECG", "55^Other"));
        assertThat(answer.code()).isEqualTo("AE");
        assertThat(answer.errors()).containsExactly("ORC-2 205");
        assertThat(serviceRequest().getCode().getCodingFirstRep().getCode()).isEqualTo("54");
    }

    @Test
    void another_order_control_is_refused_at_orc_1() {
        mllp(clinic.order());
        var answer = mllp(clinic.order("XO"));
        assertThat(answer.code()).isEqualTo("AE");
        assertThat(answer.errors()).containsExactly("ORC-1 103");
        assertThat(order(clinic.placer()).state()).isEqualTo(OrderState.READY);
    }

    @Test
    void one_refused_order_of_two_does_not_lose_the_other() {
        mllp(clinic.order());
        var second = clinic.anotherOrder();
        var answer = mllp(clinic.orders(clinic.placer(), second.placer()));
        assertThat(answer.code()).isEqualTo("AE");
        assertThat(answer.errors()).containsExactly("ORC-2 205");
        assertThat(order(second.placer()).state()).isEqualTo(OrderState.READY);
        assertThat(due(clinic.placer())).hasSize(2);
    }

    // Again

    @Test
    void the_same_message_again_gets_the_same_bytes_and_changes_nothing() {
        String message = clinic.order();
        String first = mllp(message).text();
        int stored = messages();
        assertThat(mllp(message).text()).isEqualTo(first);
        assertThat(messages()).isEqualTo(stored);
        assertThat(due(clinic.placer())).hasSize(2);
    }

    @Test
    void another_message_under_the_same_control_id_is_refused() {
        String message = clinic.order();
        mllp(message);
        var answer = mllp(message.replace("14^d", "7^d"));
        assertThat(answer.code()).isEqualTo("AE");
        assertThat(answer.errors()).containsExactly("MSH-10 205");
    }

    @Test
    void a_refused_message_is_accepted_once_it_is_mended() {
        String message = clinic.order();
        String broken = message.replace("|Quillfeather^Ottoline^^^^^L|", "||");
        assertThat(mllp(broken).code()).isEqualTo("AE");
        assertThat(orders(clinic.placer())).isEmpty();
        assertThat(mllp(broken).code()).isEqualTo("AE");
        assertThat(mllp(message).code()).isEqualTo("AA");
        assertThat(order(clinic.placer()).state()).isEqualTo(OrderState.READY);
    }

    @Test
    void what_is_due_keeps_its_bytes_and_control_ids() {
        mllp(clinic.order());
        var before = payloads();
        await("the first try", () -> deliveries(clinic.placer()).get(0).attempts() > 0);
        mllp(clinic.adt());
        assertThat(payloads()).isEqualTo(before);
        assertThat(before).doesNotHaveDuplicates();
    }

    private void isReleased() {
        assertThat(order(clinic.placer()).state()).isEqualTo(OrderState.READY);
        assertThat(serviceRequest().getStatus()).isEqualTo(ServiceRequestStatus.ACTIVE);
        assertThat(due(clinic.placer())).containsOnlyOnce("tern-street order");
        assertThat(search(Task.class, "focus=ServiceRequest/" + order(clinic.placer()).id()))
                .singleElement()
                .extracting(Task::getStatus)
                .isEqualTo(Task.TaskStatus.READY);
    }

    private ServiceRequest serviceRequest() {
        return search(ServiceRequest.class, "_id=" + order(clinic.placer()).id()).get(0);
    }

    private List<Patient> patients() {
        return search(Patient.class, query(clinic.mrn()));
    }

    private static String query(String mrn) {
        return "identifier=" + Clinic.MRN_SYSTEM + "%7C" + mrn;
    }

    private Bundle transaction(Bundle bundle) {
        var response = fhirAs("sable-point", "POST", "", bundle);
        assertThat(response.statusCode()).as(response.body()).isEqualTo(200);
        return (Bundle) FhirJson.decode(response.body());
    }

    /** FHIRPaths of the warnings in the entries of a transaction-response. */
    private static List<String> warnings(Bundle response) {
        return response.getEntry().stream()
                .map(e -> (OperationOutcome) e.getResponse().getOutcome())
                .filter(o -> o != null)
                .flatMap(o -> o.getIssue().stream())
                .flatMap(i -> i.getExpression().stream())
                .map(e -> e.getValue())
                .toList();
    }

    private java.net.http.HttpResponse<String> fhirAs(
            String client, String method, String path, Resource resource) {
        return fhir(client, method, path, resource);
    }

    private static String created(java.net.http.HttpResponse<String> response) {
        assertThat(response.statusCode()).as(response.body()).isEqualTo(201);
        return ((Resource) FhirJson.decode(response.body())).getIdElement().getIdPart();
    }

    private List<String> payloads() {
        return deliveries(clinic.placer()).stream()
                .map(DeliveryRow::delivery)
                .map(d -> new String(d.payload(), StandardCharsets.UTF_8))
                .toList();
    }

    /** Row of the message stored last. */
    private int messages() {
        int id = 1;
        while (exists(id)) {
            id++;
        }
        return id;
    }

    private boolean exists(int id) {
        return ledger.read(t -> t.messages().byId(id)).isPresent();
    }
}
