package dev.isoline.dicom;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/** Debian's DCMTK, the toolkit we did not write. */
final class Dcmtk {

    private Dcmtk() {}

    /** Skips the test where the program is not installed, unless checkers are required. */
    static void require(String program) {
        if (!Files.isExecutable(Path.of("/usr/bin", program))) {
            String missing = program + " is not installed (Debian: dcmtk)";
            Assertions.assertFalse(
                    "required".equals(System.getenv("ISOLINE_CHECKERS"))
                            || "required".equals(System.getProperty("ISOLINE_CHECKERS")),
                    missing);
            Assumptions.abort(missing);
        }
    }

    /** What the program prints. */
    static String run(String program, String... arguments)
            throws IOException, InterruptedException {
        List<String> command =
                Stream.concat(Stream.of("/usr/bin/" + program), Stream.of(arguments)).toList();
        Process running = new ProcessBuilder(command).redirectErrorStream(true).start();
        String output =
                new String(running.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
        Assertions.assertEquals(0, running.waitFor(), output);
        return output;
    }
}
