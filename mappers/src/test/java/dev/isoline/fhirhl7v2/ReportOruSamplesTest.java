package dev.isoline.fhirhl7v2;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import dev.isoline.fhir.SampleFile;
import dev.isoline.hl7v2.StrictHapi;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The sample reports as the ORU^R01 a clinic gets of them. */
class ReportOruSamplesTest {

    private static final String SAMPLES = "sample-messages/result-out/";

    @ParameterizedTest
    @ValueSource(strings = {"classified", "bare"})
    void hapi_finds_the_message_of_a_sample_report_valid(String sample) throws IOException {
        byte[] oru = oru(sample);
        StrictHapi.terser(oru);
        SampleFile.assertSame(
                SAMPLES + sample + "/out.hl7", new String(oru, StandardCharsets.UTF_8));
    }

    /** OBX-4 ties rows, OBX-14 says when: HL7 v2.5.1 ch. 7.4.2. */
    @Test
    void an_episode_is_tied_by_its_sub_id_and_begins_at_obx_14() throws IOException {
        List<String[]> rows = rows("classified", "rhythm-episode");
        assertThat(rows).hasSize(3);
        String[] fibrillation =
                rows.stream().filter(r -> r[5].startsWith("49436004")).findFirst().orElseThrow();
        assertThat(fibrillation[2]).isEqualTo("CE");
        assertThat(fibrillation[5])
                .isEqualTo(
                        "49436004^Atrial fibrillation^SCT"
                                + "^atrial-fibrillation^Atrial fibrillation^99ISOLINE");
        assertThat(fibrillation[14]).isEqualTo("20261025013000.000+0100");
        assertThat(rows("classified", "rhythm-episode-beats"))
                .filteredOn(row -> row[4].equals(fibrillation[4]))
                .extracting(row -> row[5])
                .containsExactly("1200");
    }

    /** The third hour has no rate, so it has no row; the second began at 01:30 summer time. */
    @Test
    void each_hour_with_a_value_is_a_row_of_its_own() throws IOException {
        List<String[]> rows = rows("classified", "hourly-heart-rate-mean");
        assertThat(rows).extracting(row -> row[5]).containsExactly("72", "72");
        assertThat(rows).extracting(row -> row[6]).containsOnly("/min^^UCUM");
        assertThat(rows)
                .extracting(row -> row[4].replaceAll("^\\d+", "n"))
                .containsExactly("n.1", "n.2");
        assertThat(rows)
                .extracting(row -> row[14])
                .containsExactly("20261025003000.000+0100", "20261025013000.000+0100");
    }

    @Test
    void our_own_code_is_the_alternate_one_of_a_measure_with_several() throws IOException {
        assertThat(rows("classified", "sdnn"))
                .extracting(row -> row[3])
                .containsExactly(
                        "76643-6^Standard deviation of NN intervals (SDNN)^LN"
                                + "^sdnn^Standard deviation of NN intervals (SDNN)^99ISOLINE");
    }

    private static List<String[]> rows(String sample, String code) throws IOException {
        return Arrays.stream(new String(oru(sample), StandardCharsets.UTF_8).split("\r"))
                .filter(segment -> segment.startsWith("OBX|"))
                .map(segment -> segment.split("\\|", -1))
                .filter(fields -> List.of(fields[3].split("\\^")).contains(code))
                .toList();
    }

    private static byte[] oru(String sample) throws IOException {
        String json = Files.readString(Path.of("..", SAMPLES, sample, "out.bundle.json"));
        var parser = FhirContext.forR4Cached().newJsonParser();
        Bundle bundle = parser.parseResource(Bundle.class, json);
        return DiagnosticReportToOruR01.map(bundle, ReportBundles.CONTEXT);
    }
}
