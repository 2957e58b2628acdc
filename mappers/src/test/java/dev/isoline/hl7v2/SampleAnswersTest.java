package dev.isoline.hl7v2;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The sample messages that reading alone decides, and the whole answer to each; {@code
 * -Dgolden=update} writes the answers anew. What is right: HL7 v2.5.1 ch. 2.9 and 2.14, tables 0008
 * and 0357; leniency towards real senders is common practice, no source.
 */
class SampleAnswersTest {

    private static final Path SAMPLES = Path.of("../sample-messages/order-answer");

    /**
     * HAPI 2.6.0 itself reads neither MSH-2 of three characters nor a version it has no name for.
     */
    private static final Set<String> NOT_FOR_HAPI =
            Set.of("three-encoding-characters", "version-unknown");

    static Stream<Path> cases() throws IOException {
        try (var folders = Files.list(SAMPLES)) {
            return folders.sorted().toList().stream();
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void a_sample_message_gets_its_answer(Path folder) throws IOException {
        byte[] raw = Files.readAllBytes(folder.resolve("in.hl7"));
        var answers = Answers.to(raw);
        var text = new StringBuilder();
        for (var answer : answers) {
            text.append(new String(answer.bytes(), StandardCharsets.UTF_8).replace('\r', '\n'));
        }
        Path golden = folder.resolve("out.ack.txt");
        if ("update".equals(System.getProperty("golden"))) {
            Files.writeString(golden, text);
        }
        assertThat(text.toString()).isEqualTo(Files.readString(golden));
        if (NOT_FOR_HAPI.contains(folder.getFileName().toString())) {
            return;
        }
        for (var answer : answers) {
            StrictHapi.terser(answer.bytes(), MessageHeader.peek(raw).encoding());
        }
    }
}
