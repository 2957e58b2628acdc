package dev.isoline.hl7v2fhir;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Golden files: sample-messages/order-in; {@code -Dgolden=update} rewrites them. */
class SampleMessagesTest {

    private static final Path CASES = Path.of("../sample-messages/order-in");

    @TestFactory
    Stream<DynamicTest> a_sample_message_maps_to_its_bundle() {
        return cases().stream()
                .map(c -> DynamicTest.dynamicTest(c.getFileName().toString(), () -> compare(c)));
    }

    @TestFactory
    Stream<DynamicTest> a_sample_bundle_has_no_errors_in_the_reference_validator() {
        return cases().stream()
                .map(
                        c ->
                                DynamicTest.dynamicTest(
                                        c.getFileName().toString(),
                                        () -> assertThat(FhirValidation.errors(map(c))).isEmpty()));
    }

    private static void compare(Path folder) throws IOException {
        Path golden = folder.resolve("out.bundle.json");
        String json =
                FhirValidation.R4
                                .newJsonParser()
                                .setPrettyPrint(true)
                                .encodeResourceToString(FhirValidation.bundle(map(folder)))
                        + "\n";
        if ("update".equals(System.getProperty("golden"))) {
            Files.writeString(golden, json);
        }
        assertThat(json).isEqualTo(Files.readString(golden));
    }

    private static MappedMessage map(Path folder) {
        try {
            return Messages.map(Files.readString(folder.resolve("in.hl7")));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<Path> cases() {
        try (var folders = Files.list(CASES)) {
            return folders.filter(Files::isDirectory).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
