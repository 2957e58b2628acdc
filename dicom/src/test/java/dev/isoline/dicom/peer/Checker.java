package dev.isoline.dicom.peer;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/**
 * Programs of others that tests need. Where one is absent its tests are skipped with a message;
 * with {@code ISOLINE_CHECKERS=required} they fail.
 */
public final class Checker {

    private Checker() {}

    /** Path of a program. */
    public static String program(String name, String debianPackage) {
        Optional<Path> found =
                Stream.of("/usr/bin", "/usr/sbin", "/usr/local/bin", "/sbin")
                        .map(folder -> Path.of(folder, name))
                        .filter(Files::isExecutable)
                        .findFirst();
        need(found.isPresent(), name + " is not installed (Debian: " + debianPackage + ")");
        return found.orElseThrow().toString();
    }

    /** The servers of peer tests listen on every interface: only where there is but loopback. */
    public static void aloneInTheNetwork() {
        need(
                "alone".equals(System.getProperty("isoline.network")),
                "no network namespace may be made here, or the test was not started by Maven's"
                        + " peers execution (.mvn/alone/bin/java; needs unshare and ip)");
    }

    private static void need(boolean met, String otherwise) {
        boolean required =
                "required".equals(System.getenv("ISOLINE_CHECKERS"))
                        || "required".equals(System.getProperty("ISOLINE_CHECKERS"));
        Assertions.assertTrue(met || !required, otherwise);
        Assumptions.assumeTrue(met, otherwise);
    }

    /** A folder for one run of a program. */
    static Path folder(Path parent, String name) {
        try {
            return Files.createDirectories(parent.resolve(name));
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
