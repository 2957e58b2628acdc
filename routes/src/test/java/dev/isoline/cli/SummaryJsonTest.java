package dev.isoline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import dev.isoline.ecg.summary.BeatCounts;
import dev.isoline.ecg.summary.Coverage;
import dev.isoline.ecg.summary.Episodes;
import dev.isoline.ecg.summary.HeartRates;
import dev.isoline.ecg.summary.LeadReport;
import dev.isoline.ecg.summary.Measure;
import dev.isoline.ecg.summary.MinuteQuality;
import dev.isoline.ecg.summary.Summary;
import dev.isoline.ecg.summary.Variability;
import java.io.IOException;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The JSON of a summary against its published JSON Schema (draft 2020-12). */
class SummaryJsonTest {

    private static final Path SCHEMA =
            Path.of("../conformance/src/main/resources/json/analyse-summary.schema.json");
    private static final Path WORDS = Path.of("../docs/analyse-json.md");
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final Summary FULL = FilledSummary.before("");

    /** Of a recording in which nothing could be measured. */
    private static final Summary BARE =
            new Summary(
                    new Coverage(
                            Optional.empty(),
                            Duration.ZERO,
                            Duration.ZERO,
                            200,
                            List.of(),
                            List.of()),
                    new BeatCounts(0, Map.of(), Optional.empty(), Optional.empty()),
                    new HeartRates(Optional.empty(), List.of(), Optional.empty()),
                    new Episodes(List.of(), Map.of()),
                    new Variability(0, Duration.ZERO, no(), no(), no(), no(), no(), no()),
                    FULL.settings(),
                    List.of());

    private static Measure no() {
        return Measure.refused("Too short.");
    }

    @Test
    void the_schema_itself_is_valid() throws IOException {
        var meta =
                registry()
                        .getSchema(
                                SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
        assertThat(meta.validate(Files.readString(SCHEMA), InputFormat.JSON)).isEmpty();
    }

    @Test
    void a_full_summary_is_valid() throws IOException {
        assertThat(closed().validate(json(FULL), InputFormat.JSON)).isEmpty();
    }

    @Test
    void a_summary_without_any_measure_is_valid() throws IOException {
        assertThat(closed().validate(json(BARE), InputFormat.JSON)).isEmpty();
        var refused = MAPPER.readTree(json(BARE)).at("/heartRateVariability/refused");
        assertThat(refused.get("sdnnMilliseconds").asText()).isEqualTo("Too short.");
    }

    @Test
    void a_missing_field_and_a_final_status_are_not_valid() throws IOException {
        var json = (ObjectNode) MAPPER.readTree(json(FULL));
        assertThat(open().validate(json.put("status", "final"))).isNotEmpty();
        json.put("status", "preliminary").remove("analysableSeconds");
        assertThat(open().validate(json)).isNotEmpty();
    }

    @Test
    void every_field_of_the_schema_is_explained_in_words() throws IOException {
        var words = Files.readString(WORDS);
        for (var properties : MAPPER.readTree(SCHEMA.toFile()).findValues("properties")) {
            properties
                    .fieldNames()
                    .forEachRemaining(field -> assertThat(words).contains("`" + field + "`"));
        }
    }

    /** 14 days of three leads: 60,480 minutes, in a fraction of the 64 MB the command has. */
    @Test
    void a_fortnight_of_minutes_is_written_as_it_comes() throws IOException {
        var minute = FULL.coverage().leads().get(0).minutes().get(0);
        var out = new CountingWriter();
        SummaryJson.write(withMinutes(Collections.nCopies(3 * 20_160, minute)), out);
        assertThat(out.longest).isLessThan(100_000);
        assertThat(out.characters).isGreaterThan(3 * 20_160 * 100L);
    }

    private static Summary withMinutes(List<MinuteQuality> minutes) {
        var c = FULL.coverage();
        var l = c.leads().get(0);
        var lead =
                new LeadReport(
                        l.label(), l.recorded(), l.usable(), l.disturbed(), l.amplitude(), minutes);
        return new Summary(
                new Coverage(
                        c.start(),
                        c.recorded(),
                        c.analysable(),
                        c.hz(),
                        c.detectionLeads(),
                        List.of(lead)),
                FULL.beats(),
                FULL.rates(),
                FULL.rhythm(),
                FULL.variability(),
                FULL.settings(),
                FULL.notes());
    }

    /** Keeps nothing. */
    private static final class CountingWriter extends Writer {

        private long characters;
        private int longest;

        @Override
        public void write(char[] buffer, int from, int length) {
            characters += length;
            longest = Math.max(longest, length);
        }

        @Override
        public void flush() {
            // nothing is kept
        }

        @Override
        public void close() {
            throw new IllegalStateException("the writer is the caller's");
        }
    }

    private static String json(Summary summary) throws IOException {
        var out = new StringWriter();
        SummaryJson.write(summary, out);
        return out.toString();
    }

    private static SchemaRegistry registry() {
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);
    }

    private static Schema open() throws IOException {
        return registry().getSchema(Files.readString(SCHEMA));
    }

    /** Readers accept fields they do not know; here a field nobody described is a fault. */
    private static Schema closed() throws IOException {
        var schema = MAPPER.readTree(SCHEMA.toFile());
        close(schema);
        return registry().getSchema(schema);
    }

    private static void close(JsonNode node) {
        if (node instanceof ObjectNode object && object.path("properties").isObject()) {
            object.put("additionalProperties", false);
        }
        node.forEach(SummaryJsonTest::close);
    }
}
