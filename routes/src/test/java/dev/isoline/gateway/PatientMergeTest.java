package dev.isoline.gateway;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.order.OrderState;
import java.util.List;
import org.hl7.fhir.r4.model.Coverage;
import org.hl7.fhir.r4.model.DiagnosticReport;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.Task;
import org.junit.jupiter.api.Test;

/** ADT^A40, HL7 v2.5.1 ch. 3.3.40: a patient known twice becomes one. */
class PatientMergeTest extends AssembledGateway {

    private final Clinic surviving = Clinic.patient();
    private final Clinic prior = Clinic.patient();

    private String merge() {
        return surviving.merge(prior);
    }

    @Test
    void orders_insurance_and_state_become_the_surviving_patients() {
        mllp(surviving.adtWithoutInsurance());
        mllp(prior.order());
        var answer = mllp(merge());

        assertThat(answer.code()).isEqualTo("AA");
        assertThat(answer.warnings()).isEmpty();
        String patient = patient(surviving.mrn()).getIdElement().getIdPart();
        var order = order(prior.placer());
        assertThat(order.patientId()).isEqualTo(patient);
        assertThat(order.state()).isEqualTo(OrderState.READY);
        assertThat(search(ServiceRequest.class, "subject=Patient/" + patient)).hasSize(1);
        assertThat(search(Task.class, "patient=Patient/" + patient)).hasSize(1);
        assertThat(search(Coverage.class, "beneficiary=Patient/" + patient)).hasSize(1);
    }

    @Test
    void the_prior_number_leads_to_the_surviving_patient() {
        mllp(surviving.order());
        mllp(prior.adt());
        mllp(merge());

        Patient found = patient(prior.mrn());
        assertThat(found.getIdentifierFirstRep().getValue()).isEqualTo(surviving.mrn());
        assertThat(found.getLinkFirstRep().getType()).isEqualTo(Patient.LinkType.REPLACES);
        String former = found.getLinkFirstRep().getOther().getReference();
        Patient subsumed = search(Patient.class, "_id=" + former.split("/")[1]).get(0);
        assertThat(subsumed.getActive()).isFalse();
        assertThat(subsumed.getLinkFirstRep().getOther().getReference())
                .endsWith(found.getIdElement().getIdPart());

        Clinic late = prior.anotherOrder();
        mllp(late.order());
        assertThat(order(late.placer()).patientId()).isEqualTo(found.getIdElement().getIdPart());
    }

    @Test
    void insurance_of_its_own_stays_the_surviving_patients_only_one() {
        mllp(surviving.order());
        mllp(prior.order());
        mllp(merge());
        String patient = patient(surviving.mrn()).getIdElement().getIdPart();
        assertThat(search(ServiceRequest.class, "subject=Patient/" + patient)).hasSize(2);
        assertThat(search(Coverage.class, "beneficiary=Patient/" + patient)).hasSize(1);
    }

    @Test
    void an_order_on_hold_is_released_by_the_surviving_patients_insurance() {
        mllp(surviving.adt());
        mllp(prior.orderWithoutInsurance());
        assertThat(order(prior.placer()).state()).isEqualTo(OrderState.ON_HOLD);
        mllp(merge());
        assertThat(order(prior.placer()).state()).isEqualTo(OrderState.READY);
    }

    @Test
    void a_recording_programmed_before_the_merge_belongs_to_the_order() {
        mllp(surviving.adt());
        mllp(prior.order());
        mllp(merge());
        recording("?order=" + prior.placer(), Edf.of(prior).bytes());
        await("the result", () -> !reports().isEmpty());
    }

    private List<DiagnosticReport> reports() {
        String patient = patient(surviving.mrn()).getIdElement().getIdPart();
        return search(DiagnosticReport.class, "subject=Patient/" + patient);
    }

    @Test
    void a_result_that_is_there_becomes_the_surviving_patients() {
        mllp(surviving.adt());
        mllp(prior.order());
        recording("?order=" + prior.placer(), Edf.of(prior).bytes());
        await("the result", () -> order(prior.placer()).state() == OrderState.REVIEW);
        mllp(merge());
        assertThat(reports()).hasSize(1);
    }

    @Test
    void a_number_nobody_is_known_by_is_kept_and_told() {
        mllp(surviving.order());
        var answer = mllp(merge());
        assertThat(answer.code()).isEqualTo("AA");
        assertThat(answer.warnings()).containsExactly("MRG-1 204");
        assertThat(patient(prior.mrn()).getIdentifierFirstRep().getValue())
                .isEqualTo(surviving.mrn());
    }

    @Test
    void patients_of_different_birth_dates_are_not_merged() {
        mllp(surviving.order());
        mllp(prior.order().replace("19590713", "19600713"));
        var answer = mllp(merge());
        assertThat(answer.code()).isEqualTo("AE");
        assertThat(answer.errors()).containsExactly("PID-7 207");
        assertThat(patient(prior.mrn()).hasLink()).isFalse();
        assertThat(order(prior.placer()).patientId())
                .isEqualTo(patient(prior.mrn()).getIdElement().getIdPart());
    }

    @Test
    void nor_are_they_when_the_merge_is_silent_about_the_birth_date() {
        mllp(surviving.order());
        mllp(prior.order().replace("19590713", "19600713"));
        var answer = mllp(merge().replace("19590713", ""));
        assertThat(answer.code()).isEqualTo("AE");
        assertThat(answer.errors()).containsExactly("PID-7 207");
        assertThat(patient(prior.mrn()).hasLink()).isFalse();
    }

    @Test
    void an_order_by_fhir_for_the_prior_patient_is_refused_with_the_reason() {
        mllp(surviving.order());
        mllp(prior.adt());
        String former = patient(prior.mrn()).getIdElement().getIdPart();
        mllp(merge());
        var order = prior.anotherOrder().request("Patient/" + former);
        var answer = fhir("sable-point", "POST", "/ServiceRequest", order);
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.body()).contains("ServiceRequest.subject").contains("merged");
    }

    private Patient patient(String mrn) {
        var found = search(Patient.class, "identifier=" + Clinic.MRN_SYSTEM + "|" + mrn);
        assertThat(found).hasSize(1);
        return found.get(0);
    }
}
