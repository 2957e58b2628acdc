package dev.isoline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import dev.isoline.ecg.Beat;
import dev.isoline.ecg.BeatSeries;
import dev.isoline.ecg.Stretch;
import dev.isoline.ecg.analysis.Findings;
import dev.isoline.ecg.rhythm.BeatTrack.Origin;
import dev.isoline.ecg.summary.Summary;
import dev.isoline.ecgdicom.annotation.FindingsToAnnotations;
import dev.isoline.ecgfhir.RecordingFile;
import dev.isoline.ecgfhir.ReportBundle;
import dev.isoline.ecgfhir.ReportContext;
import dev.isoline.fhirhl7v2.DiagnosticReportToOruR01;
import dev.isoline.fhirhl7v2.MessageContext;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.junit.jupiter.api.Test;

/**
 * Whether a value of the summary reaches an output: the output is another one when that value is.
 * What an output leaves out stands here with the reason, and nothing else is left out.
 */
class EveryValueIsReportedTest {

    private static final String MINUTES = "/coverage/leads/minutes";
    private static final Set<String> PATHS = FilledSummary.paths();

    @Test
    void json_has_every_value() {
        check(EveryValueIsReportedTest::json, Map.of());
    }

    @Test
    void the_text_has_every_value_but_single_minutes() {
        check(
                EveryValueIsReportedTest::text,
                Map.of(MINUTES, "a day has 1440 of them for each lead"));
    }

    @Test
    void the_fhir_report_has_every_value_but_these() {
        check(summary -> encoded(bundle(summary)), LEFT_OUT_OF_THE_REPORT);
    }

    @Test
    void the_oru_has_every_value_but_these() {
        check(EveryValueIsReportedTest::oru, LEFT_OUT_OF_THE_REPORT);
    }

    @Test
    void a_dicom_object_has_what_was_found_at_a_place_and_what_its_samples_show() {
        check(
                EveryValueIsReportedTest::annotations,
                Map.of());
    }

    private static final Map<String, String> LEFT_OUT_OF_THE_REPORT =
            Map.of(MINUTES, "a fortnight has 20,160 of them for each lead");

    private static void check(Function<Summary, String> output, Map<String, String> leftOut) {
        var missing = new TreeSet<String>();
        for (var path : PATHS) {
            String before = output.apply(FilledSummary.before(path));
            if (output.apply(FilledSummary.after(path)).equals(before)) {
                missing.add(path);
            }
        }
        assertThat(missing)
                .allSatisfy(p -> assertThat(leftOut.keySet()).anyMatch(p::startsWith));
        assertThat(leftOut.keySet())
                .as("left out, yet there")
                .allSatisfy(
                        p ->
                                assertThat(missing)
                                        .containsAll(
                                                PATHS.stream()
                                                        .filter(path -> path.startsWith(p))
                                                        .toList()));
    }

    private static String json(Summary summary) {
        var out = new StringWriter();
        try {
            SummaryJson.write(summary, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString();
    }

    private static String text(Summary summary) {
        return SummaryText.of(summary);
    }

    private static String oru(Summary summary) {
        var context =
                new MessageContext("1", Instant.EPOCH, "ISOLINE", "A", "B", "C", Map.of());
        byte[] message = DiagnosticReportToOruR01.map(bundle(summary), context);
        return new String(message, StandardCharsets.UTF_8);
    }

    private static String encoded(Bundle bundle) {
        return FhirContext.forR4Cached().newJsonParser().encodeResourceToString(bundle);
    }

    private static Bundle bundle(Summary summary) {
        var patient = new Patient();
        patient.setId("patient");
        patient.addIdentifier().setSystem("urn:oid:2.999.10.1").setValue("4711");
        var order = new ServiceRequest();
        order.setId("order");
        order.addIdentifier().setSystem("urn:oid:2.999.10.2").setValue("P-77");
        var file =
                new RecordingFile(
                        "ab".repeat(32),
                        "da39a3ee5e6b4b0d3255bfef95601890afd80709",
                        1,
                        "application/octet-stream",
                        "EDF+C",
                        "",
                        Instant.EPOCH);
        var context =
                new ReportContext(
                        "order",
                        order,
                        patient,
                        List.of(),
                        file,
                        ZoneOffset.UTC,
                        Instant.EPOCH,
                        "0.1.0");
        return ReportBundle.of(context, summary, List.of());
    }

    /** Of an object that is the whole recording, with a beat each half second. */
    private static String annotations(Summary summary) {
        var whole = new Stretch(0, 1_000_000);
        var beats = new BeatSeries();
        for (long sample = 0; sample < whole.to(); sample += 100) {
            beats.add(sample, Beat.Kind.N);
        }
        var findings =
                new Findings(
                        summary,
                        beats,
                        Origin.PROGRAM,
                        List.of(whole),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of());
        return new FindingsToAnnotations(findings).of(whole).toString();
    }
}
