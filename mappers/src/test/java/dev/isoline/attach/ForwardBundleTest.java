package dev.isoline.attach;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.fhir.ReferenceValidator;
import dev.isoline.fhir.SampleFile;
import dev.isoline.order.Completeness;
import dev.isoline.order.OrderState;
import dev.isoline.order.Requirement;
import dev.isoline.order.Vocabulary;
import java.io.IOException;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleEntryComponent;
import org.hl7.fhir.r4.model.Encounter;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.Task;
import org.junit.jupiter.api.Test;

class ForwardBundleTest {

    private static final Instant AT = Instant.parse("2026-11-02T09:31:00Z");

    private final SampleOrder sample = new SampleOrder();

    @Test
    void a_complete_order_is_forwarded_with_all_it_refers_to() throws IOException {
        Bundle bundle = bundle();

        assertThat(bundle.getEntry())
                .extracting(e -> e.getResource().fhirType())
                .containsExactlyInAnyOrder(
                        "ServiceRequest",
                        "Patient",
                        "PractitionerRole",
                        "Practitioner",
                        "Organization",
                        "Organization",
                        "Coverage",
                        "RelatedPerson",
                        "Condition",
                        "Observation",
                        "Task");
        ReferenceValidator.assertValid(bundle);
        SampleFile.assertSame("sample-messages/order-forwarded/complete/out.bundle.json", bundle);
    }

    @Test
    void the_same_order_makes_the_same_bundle() {
        assertThat(bundle().equalsDeep(bundle())).isTrue();
    }

    /** FHIR R4 http.html#ccreate and #cond-update: what makes a repeat harmless. */
    @Test
    void every_entry_is_found_again_by_a_business_identifier() {
        assertThat(bundle().getEntry())
                .allSatisfy(
                        entry ->
                                assertThat(search(entry))
                                        .startsWith("identifier=")
                                        .contains("%7C"));
        assertThat(bundle().getEntry())
                .extracting(ForwardBundleTest::search)
                .contains("identifier=urn%3Aoid%3A2.999.10.1%7C700123")
                .contains("identifier=urn%3Aoid%3A2.999.10.3%7CHB-2001");
    }

    @Test
    void a_clinician_the_service_knows_is_left_alone() {
        assertThat(entry("Practitioner").getRequest().getMethod()).isEqualTo(Bundle.HTTPVerb.POST);
        assertThat(entry("Patient").getRequest().getMethod()).isEqualTo(Bundle.HTTPVerb.PUT);
    }

    @Test
    void references_point_to_full_urls_of_the_bundle() {
        ServiceRequest order = (ServiceRequest) entry("ServiceRequest").getResource();
        assertThat(order.getSubject().getReference()).isEqualTo(entry("Patient").getFullUrl());
        assertThat(order.hasId()).isFalse();
    }

    @Test
    void what_cannot_be_found_is_referred_to_by_identifier() {
        sample.order.setEncounter(new Reference("Encounter/lost"));
        ServiceRequest order = (ServiceRequest) entry("ServiceRequest").getResource();

        assertThat(order.getEncounter().hasReference()).isFalse();
        assertThat(order.getEncounter().getType()).isEqualTo("Encounter");
        assertThat(order.getEncounter().getIdentifier().getValue()).startsWith("urn:uuid:");
        ReferenceValidator.assertValid(bundle());
    }

    @Test
    void an_organization_that_pays_and_treats_is_sent_once() {
        sample.coverage.getPayor().clear();
        sample.coverage.addPayor(SampleOrder.to(sample.clinic));

        assertThat(bundle().getEntry())
                .filteredOn(e -> e.getResource().fhirType().equals("Organization"))
                .hasSize(1);
    }

    @Test
    void an_identifier_with_a_bar_or_a_space_is_escaped() {
        sample.patient.getIdentifierFirstRep().setValue("70 0|1,2");

        assertThat(search(entry("Patient")))
                .isEqualTo("identifier=urn%3Aoid%3A2.999.10.1%7C70%200%5C%7C1%5C%2C2");
    }

    @Test
    void the_task_says_where_the_order_stands_and_why() throws IOException {
        var reasons =
                Completeness.missing(
                        EnumSet.of(Requirement.GROUP_NUMBER),
                        EnumSet.noneOf(Requirement.class),
                        Vocabulary.FHIR);
        Task task = OrderTask.of(sample.order, OrderState.ON_HOLD, reasons, AT);
        Bundle status = StatusBundle.of(task, sample.order, sample.patient);

        assertThat(task.getStatusReason().getText())
                .isEqualTo("Coverage.class: The insurance has no group number.");
        ReferenceValidator.assertValid(status);
        SampleFile.assertSame("sample-messages/status-out/on-hold/out.bundle.json", status);
    }

    @Test
    void a_status_refers_to_the_order_by_its_placer_number() {
        Task task = OrderTask.of(sample.order, OrderState.READY, List.of(), AT);
        Bundle status = StatusBundle.of(task, sample.order, sample.patient);
        Task told = (Task) status.getEntryFirstRep().getResource();

        assertThat(told.getFocus().getIdentifier().getValue()).isEqualTo("HB-2001");
        assertThat(told.getFor().getIdentifier().getValue()).isEqualTo("700123");
    }

    @Test
    void every_state_makes_a_valid_task() {
        for (OrderState state : OrderState.values()) {
            Task task = OrderTask.of(sample.order, state, List.of(), AT);
            ReferenceValidator.assertValid(StatusBundle.of(task, sample.order, sample.patient));
        }
    }

    @Test
    void an_encounter_known_to_the_ledger_goes_along() {
        var encounter = new Encounter();
        encounter.setId("e-1");
        sample.order.setEncounter(new Reference("Encounter/e-1"));
        Task task = OrderTask.of(sample.order, OrderState.ACCEPTED, List.of(), AT);
        Bundle bundle =
                ForwardBundle.of(
                        sample.order,
                        OrderState.ACCEPTED,
                        task,
                        r ->
                                r.equals("Encounter/e-1")
                                        ? Optional.of(encounter)
                                        : sample.resolve(r));

        assertThat(bundle.getEntry())
                .extracting(e -> e.getResource().fhirType())
                .contains("Encounter");
    }

    private Bundle bundle() {
        Task task = OrderTask.of(sample.order, OrderState.ACCEPTED, List.of(), AT);
        return ForwardBundle.of(sample.order, OrderState.ACCEPTED, task, sample::resolve);
    }

    private BundleEntryComponent entry(String type) {
        return bundle().getEntry().stream()
                .filter(e -> e.getResource().fhirType().equals(type))
                .findFirst()
                .orElseThrow();
    }

    private static String search(BundleEntryComponent entry) {
        return entry.getRequest().hasIfNoneExist()
                ? entry.getRequest().getIfNoneExist()
                : entry.getRequest().getUrl().replaceFirst("^[A-Za-z]+\\?", "");
    }
}
