package dev.isoline.attach;

import static org.assertj.core.api.Assertions.assertThat;

import dev.isoline.order.Completeness;
import dev.isoline.order.Problem;
import dev.isoline.order.Requirement;
import dev.isoline.order.Vocabulary;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import org.hl7.fhir.r4.model.Coverage;
import org.hl7.fhir.r4.model.Coverage.CoverageStatus;
import org.hl7.fhir.r4.model.Period;
import org.hl7.fhir.r4.model.Reference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PresentItemsTest {

    private static final EnumSet<Requirement> ALL = EnumSet.allOf(Requirement.class);

    private final SampleOrder sample = new SampleOrder();

    /** What takes each item away from a complete order. */
    private final Map<Requirement, Runnable> without =
            Map.ofEntries(
                    Map.entry(
                            Requirement.PATIENT_NAME,
                            () -> sample.patient.getNameFirstRep().setFamily(null)),
                    Map.entry(
                            Requirement.MEDICAL_RECORD_NUMBER,
                            () -> sample.patient.getIdentifierFirstRep().setSystem(null)),
                    Map.entry(
                            Requirement.BIRTH_DATE, () -> sample.patient.setBirthDateElement(null)),
                    Map.entry(Requirement.SEX, () -> sample.patient.setGender(null)),
                    Map.entry(Requirement.INSURER_NAME, () -> sample.insurer.setName(null)),
                    Map.entry(Requirement.GROUP_NUMBER, () -> sample.coverage.getClass_().clear()),
                    Map.entry(
                            Requirement.POLICY_NUMBER, () -> sample.coverage.setSubscriberId(null)),
                    Map.entry(
                            Requirement.SUBSCRIBER_NAME, () -> sample.subscriber.getName().clear()),
                    Map.entry(
                            Requirement.SUBSCRIBER_RELATIONSHIP,
                            () -> sample.coverage.setRelationship(null)),
                    Map.entry(
                            Requirement.SUBSCRIBER_ADDRESS,
                            () -> sample.subscriber.getAddress().clear()),
                    Map.entry(
                            Requirement.ORDERING_CLINICIAN, () -> sample.order.setRequester(null)),
                    Map.entry(Requirement.STUDY, () -> sample.order.setCode(null)),
                    Map.entry(Requirement.DURATION, () -> sample.order.setOccurrence(null)),
                    Map.entry(Requirement.PACEMAKER, () -> sample.pacemaker.setValue(null)));

    @Test
    void a_complete_order_brings_every_item() {
        assertThat(missing()).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(Requirement.class)
    void an_item_taken_away_is_missed_at_its_place(Requirement item) {
        without.get(item).run();

        assertThat(missing())
                .extracting(Problem::location)
                .containsExactly(item.location(Vocabulary.HL7_V2));
        assertThat(missing()).allMatch(p -> p.text().equals(item.text()));
    }

    @Test
    void an_order_without_insurance_misses_all_of_it() {
        assertThat(
                        Completeness.missing(
                                ALL,
                                PresentItems.of(
                                        sample.order, sample.patient, List.of(), sample::resolve),
                                Vocabulary.FHIR))
                .extracting(Problem::location)
                .containsExactly(
                        "Coverage.payor",
                        "Coverage.class",
                        "Coverage.subscriberId",
                        "Coverage.subscriber",
                        "Coverage.relationship",
                        "Coverage.subscriber");
    }

    @Test
    void items_of_two_insurers_do_not_make_one_insurance() {
        sample.coverage.getClass_().clear();
        Coverage second = new SampleOrder().coverage.setOrder(2);

        assertThat(
                        PresentItems.of(
                                sample.order,
                                sample.patient,
                                List.of(second, sample.coverage),
                                sample::resolve))
                .doesNotContain(Requirement.GROUP_NUMBER)
                .contains(Requirement.POLICY_NUMBER);
    }

    @Test
    void a_cancelled_insurance_does_not_count() {
        sample.coverage.setStatus(CoverageStatus.CANCELLED);

        assertThat(missing()).hasSize(6);
    }

    @Test
    void a_patient_insured_in_their_own_name_is_the_subscriber() {
        sample.coverage.setSubscriber(SampleOrder.to(sample.patient));

        assertThat(missing()).isEmpty();
    }

    @Test
    void a_record_number_of_another_type_is_none() {
        sample.patient.getIdentifierFirstRep().getType().getCodingFirstRep().setCode("SS");

        assertThat(missing()).extracting(Problem::location).containsExactly("PID-3");
    }

    @Test
    void a_period_with_both_ends_says_how_long() {
        var period = new Period();
        period.getStartElement().setValueAsString("2026-11-03");
        sample.order.setOccurrence(period);
        assertThat(missing()).extracting(Problem::location).containsExactly("TQ1-6");

        period.getEndElement().setValueAsString("2026-11-17");
        assertThat(missing()).isEmpty();
    }

    @Test
    void an_organization_is_no_ordering_clinician() {
        sample.order.setRequester(SampleOrder.to(sample.clinic));

        assertThat(missing()).extracting(Problem::location).containsExactly("ORC-12");
    }

    @Test
    void a_clinician_named_in_the_reference_alone_counts() {
        sample.order.setRequester(new Reference().setDisplay("Dr. T. Abara"));

        assertThat(missing()).isEmpty();
    }

    private List<Problem> missing() {
        return Completeness.missing(
                ALL,
                PresentItems.of(sample.order, sample.patient, sample.coverages(), sample::resolve),
                Vocabulary.HL7_V2);
    }
}
