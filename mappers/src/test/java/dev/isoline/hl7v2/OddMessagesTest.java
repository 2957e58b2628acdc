package dev.isoline.hl7v2;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every message of the shared collection of odd messages that reading alone decides, against the
 * behaviour its manifest asks for. The messages that need mapping or the ledger must be readable.
 */
class OddMessagesTest {

    private static final Path ODD =
            Path.of(
                    System.getenv().getOrDefault("ISOLINE_SHARED", "../../shared"),
                    "data/hl7v2-odd");

    /** MSA-1 and, for errors, ERR-2.1 and ERR-3.1; everything else is AA. */
    private static final Map<String, String> REFUSED =
            Map.ofEntries(
                    Map.entry("charset-unknown", "AR MSH 102"),
                    Map.entry("ed-pdf-rawcrlf", "AE OBX 100"),
                    Map.entry("ed-pdf-large", "AR MSH 200"),
                    Map.entry("ed-pdf-esc-br", "AR MSH 200"),
                    Map.entry("ed-pdf-wrong-comp", "AR MSH 200"),
                    Map.entry("trunc-mid-pid", "AE ORC 100"),
                    Map.entry("trunc-no-obr", "AE OBR 100"),
                    Map.entry("msh-only", "AE PID 100"),
                    Map.entry("msh10-empty", "AE MSH 101"),
                    Map.entry("enh-al-ne", "CA"));

    static Stream<Path> messages() throws IOException {
        if (!Files.isDirectory(ODD)) {
            return Stream.of(ODD);
        }
        try (var files = Files.list(ODD)) {
            return files
                    .filter(f -> f.toString().endsWith(".hl7") && !f.toString().contains("batch"))
                    .toList()
                    .stream()
                    .sorted();
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("messages")
    void an_odd_message_is_answered_as_its_manifest_says(Path file) throws IOException {
        assumeTrue(Files.isRegularFile(file), "no shared test material at " + ODD);
        String name = file.getFileName().toString().replace(".hl7", "");
        byte[] raw = Files.readAllBytes(file);
        var answers = Answers.to(raw);
        assertThat(answers).hasSize(1);
        assertThat(summary(answers.get(0))).isEqualTo(REFUSED.getOrDefault(name, "AA"));
    }

    /**
     * batch-count-wrong: two messages and the count flagged; batch-one-bad: 1 and 3 good, 2 not.
     */
    @ParameterizedTest(name = "{0}")
    @CsvSource({"batch-count-wrong, AA AA, 1", "batch-one-bad, AA AR AA, 0"})
    void each_message_of_a_batch_is_answered(String name, String codes, int warnings)
            throws IOException {
        Path file = ODD.resolve(name + ".hl7");
        assumeTrue(Files.isRegularFile(file), "no shared test material at " + ODD);
        var batch = Batch.of(Files.readAllBytes(file));
        var answered = batch.messages().stream().map(m -> Answers.to(m).get(0).code()).toList();
        assertThat(String.join(" ", answered)).isEqualTo(codes);
        assertThat(batch.warnings()).hasSize(warnings);
    }

    private static String summary(Acknowledgement answer) {
        String text = new String(answer.bytes(), StandardCharsets.UTF_8);
        if (answer.code().endsWith("A")) {
            return answer.code();
        }
        String[] err = text.split("\r")[2].split("\\|");
        return answer.code() + " " + err[2].split("\\^")[0] + " " + err[3].split("\\^")[0];
    }
}
