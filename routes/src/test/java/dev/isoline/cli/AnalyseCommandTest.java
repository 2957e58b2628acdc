package dev.isoline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import dev.isoline.recordings.OutsideTools;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** The command from its arguments to its output, exit code and files. */
class AnalyseCommandTest {

    @TempDir Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(Object... arguments) {
        return new CommandLine(new AnalyseCommand())
                .setOut(new PrintWriter(out))
                .setErr(new PrintWriter(err))
                .execute(Arrays.stream(arguments).map(Object::toString).toArray(String[]::new));
    }

    /**
     * Five minutes of MIT-BIH record 208 from sample 422,820 on, as python3-scipy 1.10 brings them:
     * a zip with one array of 16-bit words, 360 Hz, 200 units per mV, zero 1024.
     */
    private Path record208() throws IOException {
        var archive =
                OutsideTools.ofPackage(
                        "/usr/lib/python3/dist-packages/scipy/misc/ecg.dat", "python3-scipy");
        try (var zip = new ZipFile(archive.toFile())) {
            var entry = zip.entries().nextElement();
            var words =
                    ByteBuffer.wrap(zip.getInputStream(entry).readAllBytes())
                            .order(ByteOrder.LITTLE_ENDIAN);
            Files.write(folder.resolve("r.dat"), afterArrayHeader(words));
        }
        Files.writeString(
                folder.resolve("r.hea"), "r 1 360\nr.dat 16 200(1024)/mV 11 1024 0 0 0 MLII\n");
        return folder.resolve("r.hea");
    }

    private static byte[] afterArrayHeader(ByteBuffer words) {
        int header = words.get(0) == (byte) 0x93 ? 10 + words.getShort(8) : 0; // NumPy format 1.0
        var samples = new byte[words.capacity() - header];
        words.get(header, samples);
        return samples;
    }

    /**
     * Expected beats: peaks of a band-passed, squared and averaged signal found by scipy.signal
     * with one fixed threshold, independent of this project's filters and rules. The stretch has
     * many ventricular beats and fusions, so both counts may differ by 2 %.
     */
    @Test
    void as_many_beats_as_scipy_signal_sees_in_record_208() throws Exception {
        var beats = folder.resolve("beats.csv");
        assertThat(run(record208(), "--beats", beats)).as(err.toString()).isZero();
        var program = "src/test/resources/recordings/scipy-peaks.py";
        var peaks =
                Integer.parseInt(
                        OutsideTools.python(List.of(program, folder.resolve("r.dat").toString()))
                                .strip());
        assertThat((double) Files.readAllLines(beats).size()).isBetween(peaks * 0.98, peaks * 1.02);
    }

    /** ANSI/AAMI EC57 scoring of MIT-BIH records, first 5 minutes left out, match within 150 ms. */
    @Test
    void gross_sensitivity_and_predictivity_on_the_MIT_BIH_records_are_99_percent()
            throws Exception {
        var records = OutsideTools.shared("data/ecg/mitdb");
        var arguments =
                new ArrayList<>(List.of(OutsideTools.shared("tools/score-beats").toString()));
        try (var headers = Files.newDirectoryStream(records, "*.hea")) {
            for (var header : headers) {
                var beats = folder.resolve(header.getFileName() + ".csv");
                assertThat(run(header, "--beats", beats)).as(err.toString()).isZero();
                arguments.add(header.toString());
                arguments.add(beats.toString());
            }
        }
        var gross = OutsideTools.python(arguments).lines().reduce((a, b) -> b).orElseThrow();
        var fields = gross.strip().split("\\s+");
        assertThat(fields[0]).isEqualTo("gross");
        assertThat(Integer.parseInt(fields[1])).isGreaterThan(60_000);
        assertThat(Double.parseDouble(fields[5])).as(gross).isGreaterThanOrEqualTo(99.8);
        assertThat(Double.parseDouble(fields[7])).as(gross).isGreaterThanOrEqualTo(99.7);
    }

    /** Class counts of record 100: 2239 N, 33 A, 1 V (counted in the annotation file). */
    @Test
    void json_tells_the_reference_classes_of_record_100() throws IOException {
        assertThat(run("--json", OutsideTools.shared("data/ecg/mitdb/100.hea"))).isZero();
        var json = new ObjectMapper().readTree(out.toString());
        assertThat(json.get("status").asText()).isEqualTo("preliminary");
        assertThat(json.at("/beatsByClass/N").asInt()).isEqualTo(2239);
        assertThat(json.at("/beatsByClass/S").asInt()).isEqualTo(33);
        assertThat(json.at("/beatsByClass/V").asInt()).isEqualTo(1);
        assertThat(json.get("beats").asInt()).isEqualTo(2273);
    }

    @Test
    void the_text_says_first_that_it_is_preliminary() throws IOException {
        assertThat(run(record208())).isZero();
        assertThat(out.toString()).startsWith(SummaryText.PRELIMINARY);
    }

    @Test
    void json_keeps_the_fields_its_documentation_lists() throws IOException {
        assertThat(run("--json", record208())).isZero();
        var documented = Files.readString(Path.of("../docs/analyse-json.md"));
        new ObjectMapper()
                .readTree(out.toString())
                .fieldNames()
                .forEachRemaining(field -> assertThat(documented).contains("`" + field + "`"));
    }

    @Test
    void a_text_is_an_input_at_fault() throws IOException {
        var letter = Files.writeString(folder.resolve("r.edf"), "Dear colleague\n");
        assertThat(run(letter)).isEqualTo(1);
        assertThat(err.toString().lines()).hasSize(1);
        assertThat(err.toString()).contains("is a text");
    }

    @Test
    void a_file_that_is_not_there_is_a_command_line_at_fault() {
        assertThat(run(folder.resolve("none.edf"))).isEqualTo(2);
        assertThat(run(folder, "--pause", "0")).isEqualTo(2);
        assertThat(run()).isEqualTo(2);
    }

    @Test
    void beats_that_cannot_be_written_are_an_environment_at_fault() throws IOException {
        assertThat(run(record208(), "--beats", folder.resolve("r.hea/beats.csv"))).isEqualTo(3);
    }

    /**
     * Thirty seconds at 200 Hz of the sixty that the header announces: a beat of 80 ms each second.
     */
    private Path shortRecord() throws IOException {
        var samples = ByteBuffer.allocate(2 * 6000).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < 6000; i++) {
            samples.putShort((short) Math.max(0, 200 - 25 * Math.abs(i % 200 - 100)));
        }
        Files.write(folder.resolve("s.dat"), samples.array());
        return Files.writeString(
                folder.resolve("s.hea"), "s 1 200 12000\ns.dat 16 200 16 0 0 0 0 II\n");
    }

    @Test
    void a_short_recording_is_refused_with_what_is_missing() throws IOException {
        assertThat(run(shortRecord())).isEqualTo(1);
        assertThat(err.toString()).contains("12000 of 24000 bytes are missing");
    }

    @Test
    void what_is_readable_is_salvaged_and_every_output_says_so() throws IOException {
        assertThat(run(shortRecord(), "--salvage")).as(err.toString()).isZero();
        assertThat(out.toString()).contains("Salvaged: ").contains("bytes are missing");
        assertThat(run(shortRecord(), "--salvage", "--json")).isZero();
        var json =
                new ObjectMapper().readTree(out.toString().substring(out.toString().indexOf("{")));
        assertThat(json.path("notes").toString()).contains("Salvaged: ");
    }

    /** annot(5): the clock in a NOTE, then a word for each beat; the file ends with a zero word. */
    @Test
    void annotations_are_written_as_a_MIT_annotation_file() throws IOException {
        var file = folder.resolve("s.qrs");
        assertThat(run(shortRecord(), "--salvage", "--annotations", file)).isZero();
        var bytes = ByteBuffer.wrap(Files.readAllBytes(file)).order(ByteOrder.LITTLE_ENDIAN);
        assertThat(bytes.getShort() & 0xffff).isEqualTo(22 << 10);
        assertThat(bytes.getShort(bytes.capacity() - 2)).isZero();
        int clock = "## time resolution: 200".length() + 1; // to an even number of bytes
        int beats = (bytes.capacity() - 2 - 2 - clock - 2) / 2;
        assertThat(beats).isBetween(27, 30);
    }
}
