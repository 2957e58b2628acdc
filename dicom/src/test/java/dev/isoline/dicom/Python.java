package dev.isoline.dicom;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/** Debian's Python with pydicom, the reader we did not write. */
public final class Python {

    private static final String INTERPRETER = "/usr/bin/python3";

    private Python() {}

    /** What the script prints; a failing script fails the test with what it says. */
    public static String run(String script) throws IOException, InterruptedException {
        requirePydicom();
        Path file = Files.createTempFile("isoline", ".py");
        try {
            Files.writeString(file, script);
            var process = new ProcessBuilder(INTERPRETER, "-W", "ignore", file.toString());
            Process running = process.redirectErrorStream(true).start();
            String output =
                    new String(running.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            Assertions.assertEquals(0, running.waitFor(), output);
            return output.strip();
        } finally {
            Files.delete(file);
        }
    }

    private static void requirePydicom() throws InterruptedException {
        if (!hasPydicom()) {
            Assertions.assertFalse(
                    "required".equals(System.getenv("ISOLINE_CHECKERS"))
                            || "required".equals(System.getProperty("ISOLINE_CHECKERS")),
                    "pydicom is required but not installed (Debian: python3-pydicom)");
            Assumptions.abort("pydicom is not installed (Debian: python3-pydicom)");
        }
    }

    private static boolean hasPydicom() throws InterruptedException {
        try {
            return new ProcessBuilder(INTERPRETER, "-c", "import pydicom").start().waitFor() == 0;
        } catch (IOException e) {
            return false;
        }
    }
}
