package dev.isoline.conformance;

import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Runs a Python script of the test resources; without Python and numpy the test is skipped. */
public final class IndependentReader {

    private static final String PYTHON =
            Files.isExecutable(Path.of("/usr/bin/python3")) ? "/usr/bin/python3" : "python3";

    private IndependentReader() {}

    public static String run(String script, Path... arguments) throws Exception {
        needs("numpy");
        var command = new ArrayList<>(List.of(PYTHON, "-c", text(script)));
        for (Path argument : arguments) {
            command.add(argument.toString());
        }
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (process.waitFor() != 0) {
            fail(output);
        }
        return output.strip();
    }

    /** A missing reader is a failure where {@code ISOLINE_CHECKERS=required}. */
    public static void needs(String modules) throws Exception {
        if (!required()) {
            assumeTrue(imports(modules), "needs Python with " + modules);
        }
    }

    private static boolean required() {
        return "required"
                .equals(System.getProperty("ISOLINE_CHECKERS", System.getenv("ISOLINE_CHECKERS")));
    }

    private static boolean imports(String modules) throws Exception {
        try {
            return new ProcessBuilder(PYTHON, "-c", "import " + modules).start().waitFor() == 0;
        } catch (IOException e) {
            return false;
        }
    }

    private static String text(String script) throws IOException {
        try (var in = IndependentReader.class.getResourceAsStream(script)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
