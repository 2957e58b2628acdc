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

    private static final Set<String> PATHS = FilledSummary.paths();

    // spotless:off
    private static final Map<String, String> OUT_OF_THE_TEXT = Map.of(
            "/coverage/leads/minutes/.*",                     "a day has 1440 of them for each lead",
            "/rates/hours/rate/(minAt|maxAt)",                "an hour has one line");

    private static final Map<String, String> OUT_OF_THE_REPORT = Map.of(
            "/coverage/leads/minutes/.*",                     "a fortnight has 20,160 of them for each lead",
            "/rates/hours/rate/(minAt|maxAt)",                "a series has numbers only",
            "/rates/hours/from",                              "a series has a value for each hour from the start on",
            "/beats/.*/(longest|fastest)Run/(kind|rates/m[ai][xn])", "they stand at the episode");

    private static final Map<String, String> OUT_OF_THE_OBJECTS = Map.of(
            "/beats/.*",                                      "the beats themselves are annotated",
            "/rates/hours/.*",                                "an hour is no finding at a place",
            "/rhythm/burdens/.*/(episodes|beats|time)",       "the episodes themselves are annotated",
            "/rhythm/burdens/(?!ATRIAL_FIBRILLATION).*/percent", "no measure that is used alone",
            "/rhythm/list/(beats|rates/.*)",                  "they can be counted between the ends",
            "/coverage/(recorded|analysable|detectionLeads|leads/.*)", "stretches without a signal are annotated",
            "/coverage/start",                                "the object itself has it",
            "/settings/(?!RATE_BEATS).*",                     "they belong to the measures left out",
            "/variability/(intervals|analysed|.*/refusal)",   "an object has values, no reasons");
    // spotless:on

    @Test
    void json_has_every_value() {
        check(summary -> List.of(json(summary)), Map.of());
    }

    @Test
    void the_text_has_all_a_person_reads() {
        check(summary -> List.of(SummaryText.of(summary)), OUT_OF_THE_TEXT);
    }

    @Test
    void the_report_in_fhir_and_as_oru_has_all_but_these() {
        check(EveryValueIsReportedTest::report, OUT_OF_THE_REPORT);
    }

    @Test
    void the_dicom_objects_have_what_was_found_at_a_place() {
        check(summary -> List.of(annotations(summary)), OUT_OF_THE_OBJECTS);
    }

    private static void check(
            Function<Summary, List<String>> outputs, Map<String, String> leftOut) {
        List<String> filled = outputs.apply(FilledSummary.before(""));
        for (String path : PATHS) {
            boolean refusal = path.endsWith("/refusal");
            List<String> before = refusal ? outputs.apply(FilledSummary.before(path)) : filled;
            List<String> after = outputs.apply(FilledSummary.after(path));
            boolean out = leftOut.keySet().stream().anyMatch(path::matches);
            for (int i = 0; i < before.size(); i++) {
                assertThat(after.get(i).equals(before.get(i)))
                        .as(path + (out ? " is left out, yet there" : " is lost"))
                        .isEqualTo(out);
            }
        }
    }

    private static List<String> report(Summary summary) {
        var bundle = bundle(summary);
        return List.of(encoded(bundle), oru(bundle));
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

    private static String oru(Bundle bundle) {
        var context = new MessageContext("1", Instant.EPOCH, "ISOLINE", "A", "B", "C", Map.of());
        byte[] message = DiagnosticReportToOruR01.map(bundle, context);
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

    /** Of an object that is the whole recording, with a beat every two seconds. */
    private static String annotations(Summary summary) {
        var whole = new Stretch(0, 1_000_000);
        var beats = new BeatSeries();
        for (long sample = 0; sample < whole.to(); sample += 400) {
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
