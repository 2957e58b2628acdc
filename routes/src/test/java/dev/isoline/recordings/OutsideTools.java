package dev.isoline.recordings;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/** What lies outside the project and may be absent: shared material, Python with numpy. */
public final class OutsideTools {

    private static final Path PYTHON = Path.of("/usr/bin/python3");

    private OutsideTools() {}

    /** A path of the shared material, beside the repository or where ISOLINE_SHARED says. */
    public static Path shared(String path) {
        var folder = System.getenv("ISOLINE_SHARED");
        var found =
                (folder != null
                                ? Path.of(folder)
                                : Path.of("").toAbsolutePath().resolve("../../shared"))
                        .resolve(path)
                        .normalize();
        Assumptions.assumeTrue(Files.exists(found), "not here: the shared material, " + path);
        return found;
    }

    /** Runs a Python program and gives what it prints. */
    public static String python(List<String> arguments) throws IOException, InterruptedException {
        require(Files.isExecutable(PYTHON), "not here: /usr/bin/python3");
        var command = new ArrayList<>(List.of(PYTHON.toString()));
        command.addAll(arguments);
        var process = new ProcessBuilder(command).redirectErrorStream(true).start();
        var printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        require(process.waitFor() == 0 || !printed.contains("No module named"), printed);
        Assertions.assertEquals(0, process.exitValue(), printed);
        return printed;
    }

    /** A file a Debian package brings. */
    public static Path ofPackage(String path, String name) {
        require(Files.exists(Path.of(path)), "not here: Debian package " + name);
        return Path.of(path);
    }

    private static void require(boolean present, String message) {
        if ("required"
                .equals(
                        System.getProperty(
                                "ISOLINE_CHECKERS", System.getenv("ISOLINE_CHECKERS")))) {
            Assertions.assertTrue(present, message);
        }
        Assumptions.assumeTrue(present, message);
    }
}
