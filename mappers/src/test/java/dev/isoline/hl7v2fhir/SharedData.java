package dev.isoline.hl7v2fhir;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/** Test material beside the repository; a test that needs it is skipped where it is absent. */
final class SharedData {

    private SharedData() {}

    static Path folder(String name) {
        String root = System.getenv().getOrDefault("ISOLINE_SHARED", "../../shared");
        Path folder = Path.of(root, "data", name);
        assumeTrue(Files.isDirectory(folder), () -> "no test material in " + folder);
        return folder;
    }

    static Stream<Path> files(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files
                    .filter(f -> f.toString().matches(".*\\.(hl7|txt)"))
                    .sorted()
                    .toList()
                    .stream();
        }
    }

    /** One byte, one character: the character set does not matter here. */
    static String text(Path file) {
        try {
            return Files.readString(file, StandardCharsets.ISO_8859_1);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
