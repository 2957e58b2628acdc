package dev.isoline.ecgfhir;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import dev.isoline.fhir.ReferenceValidator;
import dev.isoline.fhir.SampleFile;
import java.io.IOException;
import java.util.List;
import java.util.TimeZone;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.DiagnosticReport;
import org.hl7.fhir.r4.model.DiagnosticReport.DiagnosticReportStatus;
import org.hl7.fhir.r4.model.DocumentReference;
import org.hl7.fhir.r4.model.ImagingStudy;
import org.hl7.fhir.r4.model.Provenance;
import org.hl7.fhir.r4.model.Resource;
import org.junit.jupiter.api.Test;

class ReportBundleTest {

    @Test
    void a_report_with_classified_beats_is_valid_r4() throws IOException {
        Bundle bundle = SampleReport.bundle();

        ReferenceValidator.assertValid(bundle);
        SampleFile.assertSame("sample-messages/result-out/classified/out.bundle.json", bundle);
    }

    @Test
    void a_report_of_a_recording_that_tells_little_is_valid_r4() throws IOException {
        Bundle bundle = ReportBundle.of(SampleReport.context(), SampleReport.BARE, List.of());

        ReferenceValidator.assertValid(bundle);
        SampleFile.assertSame("sample-messages/result-out/bare/out.bundle.json", bundle);
    }

    @Test
    void the_report_is_preliminary_and_says_so() {
        DiagnosticReport report = report(SampleReport.bundle());

        assertThat(report.getStatus()).isEqualTo(DiagnosticReportStatus.PRELIMINARY);
        assertThat(report.getConclusion())
                .startsWith("Computed by a program")
                .contains("preliminary, not confirmed by a clinician");
    }

    /** FHIR R4 http.html#transaction: a reference to a full URL names an entry of the bundle. */
    @Test
    void results_refer_to_entries_of_the_bundle() {
        Bundle bundle = SampleReport.bundle();
        List<String> fullUrls =
                bundle.getEntry().stream().map(Bundle.BundleEntryComponent::getFullUrl).toList();

        assertThat(fullUrls).doesNotHaveDuplicates();
        assertThat(report(bundle).getResult())
                .hasSize(observations(bundle))
                .allMatch(r -> fullUrls.contains(r.getReference()));
        assertThat(fullUrls).contains(report(bundle).getSubject().getReference());
        assertThat(fullUrls).contains(report(bundle).getBasedOnFirstRep().getReference());
    }

    @Test
    void a_repeat_finds_every_entry_again() {
        assertThat(SampleReport.bundle().getEntry())
                .extracting(e -> e.getRequest().getUrl() + e.getRequest().getIfNoneExist())
                .allMatch(search -> search.matches(".*(identifier|_tag)=.+%7C.+"))
                .doesNotHaveDuplicates();
    }

    @Test
    void two_recordings_of_one_order_give_two_reports() {
        ReportContext one = SampleReport.context();
        RecordingFile file = one.recording();
        var other =
                new ReportContext(
                        one.orderId(),
                        one.order(),
                        one.patient(),
                        one.requester(),
                        new RecordingFile(
                                "cd".repeat(32),
                                file.sha1(),
                                file.size(),
                                file.contentType(),
                                file.format(),
                                file.equipment(),
                                file.received()),
                        one.zone(),
                        one.issued(),
                        one.software());
        Bundle second = ReportBundle.of(other, SampleReport.CLASSIFIED, SampleReport.OBJECTS);

        assertThat(second.getEntryFirstRep().getRequest().getUrl())
                .startsWith("DiagnosticReport?identifier=urn%3Aietf%3Arfc%3A3986%7Curn%3Auuid")
                .isNotEqualTo(SampleReport.bundle().getEntryFirstRep().getRequest().getUrl());
    }

    @Test
    void patient_and_order_of_the_receiver_are_left_alone() {
        assertThat(SampleReport.bundle().getEntry())
                .filteredOn(
                        e ->
                                List.of("Patient", "ServiceRequest", "Practitioner")
                                        .contains(e.getResource().fhirType()))
                .hasSize(3)
                .allMatch(e -> e.getRequest().getMethod() == Bundle.HTTPVerb.POST)
                .allMatch(e -> e.getRequest().hasIfNoneExist());
    }

    /** The SHA-1 of no bytes, RFC 3174 test by sha1sum, in base64 by base64(1). */
    @Test
    void the_recording_file_is_known_by_its_sha_1() {
        var document = (DocumentReference) resource(SampleReport.bundle(), "DocumentReference");

        assertThat(
                        document.getContentFirstRep()
                                .getAttachment()
                                .getHashElement()
                                .getValueAsString())
                .isEqualTo("2jmj7l5rSw0yVb/vlWAYkK/YBwk=");
        assertThat(document.getContentFirstRep().getAttachment().getSize()).isEqualTo(5_400_000);
    }

    @Test
    void the_imaging_study_lists_every_object_once() {
        var study = (ImagingStudy) resource(SampleReport.bundle(), "ImagingStudy");

        assertThat(study.getIdentifierFirstRep().getSystem()).isEqualTo("urn:dicom:uid");
        assertThat(study.getIdentifierFirstRep().getValue()).isEqualTo("urn:oid:2.25.1");
        assertThat(study.getSeries()).hasSize(1);
        assertThat(study.getSeriesFirstRep().getInstance())
                .extracting(i -> i.getUid())
                .containsExactly("2.25.31", "2.25.32");
        assertThat(study.getStartedElement().getValueAsString())
                .isEqualTo("2026-10-24T23:30:00+00:00");
    }

    @Test
    void provenance_says_which_program_made_it_of_which_file() {
        Bundle bundle = SampleReport.bundle();
        var provenance = (Provenance) resource(bundle, "Provenance");

        assertThat(provenance.getTargetFirstRep().getReference())
                .isEqualTo(bundle.getEntryFirstRep().getFullUrl());
        assertThat(provenance.getAgentFirstRep().getWho().getReference()).startsWith("urn:uuid:");
    }

    @Test
    void the_machines_time_zone_changes_nothing() {
        TimeZone before = TimeZone.getDefault();
        String here = json(SampleReport.bundle());
        try {
            TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Auckland"));
            assertThat(json(SampleReport.bundle())).isEqualTo(here);
        } finally {
            TimeZone.setDefault(before);
        }
    }

    private static int observations(Bundle bundle) {
        return (int)
                bundle.getEntry().stream()
                        .filter(entry -> entry.getResource().fhirType().equals("Observation"))
                        .count();
    }

    private static String json(Bundle bundle) {
        return FhirContext.forR4Cached().newJsonParser().encodeResourceToString(bundle);
    }

    private static DiagnosticReport report(Bundle bundle) {
        return (DiagnosticReport) bundle.getEntryFirstRep().getResource();
    }

    private static Resource resource(Bundle bundle, String type) {
        return bundle.getEntry().stream()
                .map(Bundle.BundleEntryComponent::getResource)
                .filter(r -> r.fhirType().equals(type))
                .findFirst()
                .orElseThrow();
    }
}
