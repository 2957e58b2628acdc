package dev.isoline.fhirdicom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.isoline.attach.SampleOrder;
import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Tag;
import dev.isoline.order.ContentError;
import java.time.Instant;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.AllergyIntolerance;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Encounter;
import org.hl7.fhir.r4.model.Location;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Period;
import org.hl7.fhir.r4.model.Practitioner;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestPriority;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * PS3.4 table K.6-1, row by row, and the rows order to worklist of IHE RAD (TF-2 appendix B) and of
 * the HL7 imaging-service-request guide (0.1.0, concept map mwl-entry-from-fhir).
 */
class ServiceRequestToWorklistItemTest {

    private static final String TYPES = "http://terminology.hl7.org/CodeSystem/v2-0203";
    private static final ZoneId LISBON = ZoneId.of("Europe/Lisbon");
    private static final Instant RECEIVED = Instant.parse("2026-11-03T10:15:30.5Z");

    private final SampleOrder sample = new SampleOrder();
    private final Map<String, Resource> more = new HashMap<>();
    private Station station = Station.ANY;

    private DataSet item() {
        return ServiceRequestToWorklistItem.map(
                sample.order,
                sample.patient,
                reference ->
                        Optional.ofNullable(more.get(reference))
                                .or(() -> sample.resolve(reference)),
                station,
                LISBON,
                RECEIVED);
    }

    private DataSet step() {
        return item().item(Tag.ScheduledProcedureStepSequence).orElseThrow();
    }

    private <R extends Resource> Reference known(R resource, String id) {
        resource.setId(id);
        more.put(resource.fhirType() + "/" + id, resource);
        return new Reference(resource.fhirType() + "/" + id);
    }

    private static String text(DataSet dataSet, int tag) {
        try {
            return dataSet.text(tag).orElse("");
        } catch (DicomException e) {
            throw new AssertionError(e);
        }
    }

    @ParameterizedTest(name = "{0}")
    @CsvFileSource(resources = "ps3.4-k.6-1.csv", numLinesToSkip = 1)
    void return_keys_have_what_their_type_asks_for(
            String keyword, String sequence, String matching, String type) throws Exception {
        station = new Station("HB_ECG_1", "", "");
        DataSet at = sequence == null ? item() : step();
        int tag = Tag.class.getField(keyword).getInt(null);
        switch (type) {
            case "1" -> assertThat(at.hasValue(tag)).as(keyword + " has a value").isTrue();
            case "2" -> assertThat(at.contains(tag)).as(keyword + " is there").isTrue();
            case "1C" -> assertThat(at.hasValue(tag)).as(keyword + ", code or words").isTrue();
            // An ECG needs neither pre-medication nor contrast agent.
            case "2C" -> assertThat(at.contains(tag)).as(keyword).isFalse();
            default -> assertThat(type).isEqualTo("3");
        }
    }

    @Test
    void the_same_order_makes_the_same_item() {
        assertThat(item()).isEqualTo(item());
    }

    /** HL7 guide: ServiceRequest.identifier by its type; ZDS-1 or derived for the study. */
    @Test
    void numbers_are_those_the_result_objects_will_carry() {
        var context =
                ServiceRequestToOrderContext.map(sample.order, sample.patient, sample.clinician);
        var item = item();
        assertThat(text(item, Tag.StudyInstanceUID)).isEqualTo(context.studyUid());
        assertThat(text(item, Tag.AccessionNumber)).isEqualTo("IL1");
        assertThat(text(item, Tag.RequestedProcedureID)).isEqualTo(context.requestedProcedureId());
        assertThat(text(step(), Tag.ScheduledProcedureStepID)).isEqualTo("IL1");
        assertThat(text(item, Tag.PlacerOrderNumberImagingServiceRequest)).isEqualTo("HB-2001");
        assertThat(text(item, Tag.FillerOrderNumberImagingServiceRequest)).isEqualTo("IL-1");
    }

    /** PID-3, PID-5, PID-7, PID-8. */
    @Test
    void the_patient_is_named_by_number_issuer_name_birth_date_and_sex() {
        sample.patient
                .addIdentifier()
                .setSystem("urn:oid:2.999.77")
                .setValue("88")
                .getType()
                .addCoding()
                .setSystem(TYPES)
                .setCode("PI");
        sample.patient
                .addIdentifier()
                .setSystem("http://hl7.org/fhir/sid/us-ssn")
                .setValue("123-45-6789")
                .getType()
                .addCoding()
                .setSystem(TYPES)
                .setCode("SS");
        var item = item();
        assertThat(text(item, Tag.PatientName)).isEqualTo("Ferrow^Mina");
        assertThat(text(item, Tag.PatientID)).isEqualTo("700123");
        assertThat(text(item, Tag.IssuerOfPatientID)).isEqualTo("2.999.10.1");
        assertThat(text(item, Tag.PatientBirthDate)).isEqualTo("19610412");
        assertThat(text(item, Tag.PatientSex)).isEqualTo("F");
        assertThat(item.items(Tag.OtherPatientIDsSequence))
                .extracting(other -> text(other, Tag.PatientID))
                .containsExactly("88");
    }

    /** OBR-4; the duration is TQ1-6. */
    @Test
    void what_is_asked_for_is_told_in_words_with_its_duration_and_as_a_code() {
        assertThat(text(step(), Tag.ScheduledProcedureStepDescription))
                .isEqualTo("Ambulatory ECG, 14 days, 14 d");
        assertThat(text(step(), Tag.CommentsOnTheScheduledProcedureStep))
                .isEqualTo("Record for 14 d.");
        var code = step().item(Tag.ScheduledProtocolCodeSequence).orElseThrow();
        assertThat(text(code, Tag.CodeValue)).isEqualTo("427047002");
        assertThat(text(code, Tag.CodingSchemeDesignator)).isEqualTo("SCT");
        assertThat(text(item(), Tag.RequestedProcedureDescription))
                .isEqualTo("Ambulatory ECG, 14 days");
    }

    @Test
    void long_words_are_cut_so_that_the_duration_stays() {
        sample.order.setCode(new CodeableConcept().setText("a".repeat(80)));
        assertThat(text(step(), Tag.ScheduledProcedureStepDescription))
                .hasSize(64)
                .endsWith("aa, 14 d");
    }

    @Test
    void a_station_is_the_configured_one_else_left_to_whoever_asks() {
        assertThat(step().contains(Tag.ScheduledStationAETitle)).isTrue();
        assertThat(step().hasValue(Tag.ScheduledStationAETitle)).isFalse();
        station = new Station("HB_ECG_1", "Recorder desk", "Room 4");
        assertThat(text(step(), Tag.ScheduledStationAETitle)).isEqualTo("HB_ECG_1");
        assertThat(text(step(), Tag.ScheduledStationName)).isEqualTo("Recorder desk");
        assertThat(text(step(), Tag.ScheduledProcedureStepLocation)).isEqualTo("Room 4");
        sample.order.addLocationReference(known(new Location().setName("Ward 7"), "w"));
        assertThat(text(step(), Tag.ScheduledProcedureStepLocation)).isEqualTo("Ward 7");
    }

    /** FHIR request-priority against the Defined Terms of (0040,1003). */
    @ParameterizedTest
    @CsvSource({"STAT, STAT", "ASAP, HIGH", "URGENT, HIGH", "ROUTINE, ROUTINE"})
    void priority_is_a_defined_term(ServiceRequestPriority priority, String term) {
        sample.order.setPriority(priority);
        assertThat(text(item(), Tag.RequestedProcedurePriority)).isEqualTo(term);
    }

    /** ORC-12 and PV1-8. */
    @Test
    void the_referring_physician_is_the_encounters_else_the_one_who_ordered() {
        assertThat(text(item(), Tag.RequestingPhysician)).isEqualTo("Abara^Tomas");
        assertThat(text(item(), Tag.ReferringPhysicianName)).isEqualTo("Abara^Tomas");
        assertThat(text(item(), Tag.RequestingService)).isEqualTo("Harrow Bay Clinic");
        var referrer = new Practitioner();
        referrer.addName().setFamily("Lind").addGiven("Eva");
        var encounter = new Encounter();
        encounter
                .addParticipant()
                .setIndividual(known(referrer, "r"))
                .addType()
                .addCoding()
                .setSystem("http://terminology.hl7.org/CodeSystem/v3-ParticipationType")
                .setCode("REF");
        sample.order.setEncounter(known(encounter, "e"));
        assertThat(text(item(), Tag.ReferringPhysicianName)).isEqualTo("Lind^Eva");
        assertThat(text(item(), Tag.RequestingPhysician)).isEqualTo("Abara^Tomas");
    }

    /** PV1-19 and PV1-3. */
    @Test
    void the_visit_is_named_by_its_number_and_place() {
        var encounter = new Encounter();
        encounter
                .addIdentifier()
                .setSystem("urn:oid:2.999.10.4")
                .setValue("V5")
                .getType()
                .addCoding()
                .setSystem(TYPES)
                .setCode("VN");
        encounter.addLocation().setLocation(known(new Location().setName("HARROWBAY CARDIO"), "l"));
        sample.order.setEncounter(known(encounter, "e"));
        assertThat(text(item(), Tag.AdmissionID)).isEqualTo("V5");
        assertThat(text(item(), Tag.CurrentPatientLocation)).isEqualTo("HARROWBAY CARDIO");
        assertThat(item().items(Tag.IssuerOfAdmissionIDSequence)).hasSize(1);
    }

    /** OBR-31, DG1, NTE. */
    @Test
    void reason_and_notes_are_told() {
        sample.order.addNote().setText("Lives alone");
        sample.order.setPatientInstruction("Keep the diary");
        assertThat(text(item(), Tag.ReasonForTheRequestedProcedure)).isEqualTo("Syncope");
        assertThat(text(item(), Tag.RequestedProcedureComments))
                .isEqualTo("Lives alone; Keep the diary");
    }

    @Test
    void a_name_that_dicom_cannot_carry_is_refused_by_its_place() {
        sample.patient.getNameFirstRep().setFamily("Ferrow^X");
        assertThatThrownBy(this::item)
                .isInstanceOfSatisfying(
                        ContentError.class,
                        e -> assertThat(e.problems().get(0).location()).isEqualTo("Patient.name"));
    }

    @Test
    void an_accession_number_of_seventeen_characters_is_refused_by_its_tag() {
        sample.order.getIdentifier().get(2).setValue("A".repeat(17));
        assertThatThrownBy(this::item)
                .isInstanceOfSatisfying(
                        ContentError.class,
                        e ->
                                assertThat(e.problems().get(0).location())
                                        .isIn("(0008,0050)", "(0040,1001)", "(0040,0009)"));
    }

    @Nested
    class Medical_alerts_and_special_needs {

        @ParameterizedTest
        @CsvSource({
            "Y, Cardiac pacemaker in situ",
            "373066001, Cardiac pacemaker in situ",
            "N, ''",
            "373067005, ''",
            "U, Pacemaker: not known"
        })
        void tell_of_a_pacemaker(String code, String alert) {
            sample.pacemaker.setValue(new CodeableConcept(new Coding("s", code, null)));
            assertThat(text(item(), Tag.MedicalAlerts)).isEqualTo(alert);
            assertThat(text(item(), Tag.SpecialNeeds)).isEqualTo(alert);
        }

        @Test
        void are_empty_where_nobody_answered() {
            sample.order.getSupportingInfo().clear();
            assertThat(text(item(), Tag.MedicalAlerts)).isEmpty();
        }

        @Test
        void weight_pregnancy_and_allergies_are_told_when_known() throws Exception {
            assertThat(item().hasValue(Tag.PregnancyStatus)).isFalse();
            assertThat(item().hasValue(Tag.PatientWeight)).isFalse();
            supporting("29463-7").setValue(new Quantity(71.5).setCode("kg"));
            supporting("82810-3")
                    .setValue(
                            new CodeableConcept(
                                    new Coding("http://snomed.info/sct", "77386006", "Pregnant")));
            var allergy = new AllergyIntolerance();
            allergy.setCode(new CodeableConcept().setText("Acrylate adhesive"));
            sample.order.addSupportingInfo(known(allergy, "a"));
            assertThat(item().number(Tag.PatientWeight)).contains(71.5);
            assertThat(item().integer(Tag.PregnancyStatus)).contains(3L);
            assertThat(text(item(), Tag.Allergies)).isEqualTo("Acrylate adhesive");
        }

        private Observation supporting(String loinc) {
            var observation = new Observation();
            observation.setCode(new CodeableConcept(new Coding("http://loinc.org", loinc, null)));
            sample.order.addSupportingInfo(known(observation, loinc));
            return observation;
        }
    }

    /** TQ1-7, ORC-7.4, OBR-27.4; the order of preference is ours. */
    @Nested
    class A_step_starts {

        private void starts(String date, String time) {
            assertThat(text(step(), Tag.ScheduledProcedureStepStartDate)).isEqualTo(date);
            assertThat(text(step(), Tag.ScheduledProcedureStepStartTime)).isEqualTo(time);
        }

        @Test
        void at_the_event_of_its_timing_in_the_senders_zone() {
            sample.order
                    .getOccurrenceTiming()
                    .addEventElement()
                    .setValueAsString("2026-07-04T23:30:00Z");
            starts("20260705", "003000");
            assertThat(text(item(), Tag.TimezoneOffsetFromUTC)).isEqualTo("+0100");
        }

        @Test
        void and_ends_after_its_duration() {
            sample.order.getOccurrenceTiming().addEventElement().setValueAsString("2026-11-04");
            starts("20261104", "000000");
            assertThat(text(step(), Tag.ScheduledProcedureStepEndDate)).isEqualTo("20261118");
            assertThat(text(step(), Tag.ScheduledProcedureStepEndTime)).isEqualTo("000000");
        }

        @Test
        void at_the_start_of_its_period_which_says_how_long() {
            sample.order.setOccurrence(
                    new Period()
                            .setStartElement(new DateTimeType("2026-11-04T09:00:00Z"))
                            .setEndElement(new DateTimeType("2026-11-06T09:00:00Z")));
            starts("20261104", "090000");
            assertThat(text(step(), Tag.ScheduledProcedureStepEndDate)).isEqualTo("20261106");
            assertThat(text(step(), Tag.ScheduledProcedureStepDescription)).endsWith(", 2 d");
        }

        @Test
        void at_occurrence_date_time() {
            sample.order.setOccurrence(new DateTimeType("2026-11-04T09:00:00Z"));
            starts("20261104", "090000");
            assertThat(step().contains(Tag.ScheduledProcedureStepEndDate)).isFalse();
        }

        @Test
        void when_the_order_was_written_where_it_does_not_say() {
            starts("20261102", "093000");
            assertThat(step().contains(Tag.ScheduledProcedureStepEndDate)).isFalse();
        }

        @Test
        void when_the_order_was_received_where_nothing_else_is_known() {
            sample.order.setAuthoredOnElement(null);
            starts("20261103", "101530");
        }

        @Test
        void on_the_first_day_of_a_month_that_names_no_day() {
            sample.order.setOccurrence(new DateTimeType("2026-12"));
            starts("20261201", "000000");
        }
    }
}
