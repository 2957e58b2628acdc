package dev.isoline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The launcher starts {@code analyse} and {@code convert} with a few libraries only, those the
 * build writes to {@code classpath-short}: with all of them, a start takes longer than the work.
 */
class ShortClassPathTest {

    private static final String SAMPLE = "../sample-messages/recording-in/ten-seconds/in.edf";
    private static final String ORDER =
            "../sample-messages/order-forwarded/complete/out.bundle.json";
    private static final List<String> LIBRARIES =
            List.of("picocli", "jackson-core", "jackson-databind", "jackson-annotations");

    @TempDir Path folder;

    @Test
    void analyse_needs_no_other_library() throws Exception {
        assertThat(run("analyse", SAMPLE)).containsPattern("All +13\\b");
        assertThat(run("analyse", "--json", SAMPLE)).contains("\"beats\" : 13");
    }

    @Test
    void convert_needs_no_other_library() throws Exception {
        assertThat(run("convert", SAMPLE, "--order", ORDER, "--out", folder.toString()))
                .contains("2000 samples a channel");
    }

    private static String run(String... arguments) throws IOException, InterruptedException {
        var command = new ArrayList<>(List.of(java(), "-cp", shortClassPath()));
        command.add("dev.isoline.cli.Isoline");
        command.addAll(List.of(arguments));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        var output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as(output).isZero();
        return output;
    }

    private static String java() {
        return Path.of(System.getProperty("java.home"), "bin", "java").toString();
    }

    private static String shortClassPath() {
        return Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                .filter(ShortClassPathTest::isShort)
                .collect(Collectors.joining(File.pathSeparator));
    }

    /** The project's own classes, as folders or jars, and the libraries. */
    private static boolean isShort(String entry) {
        String name = Path.of(entry).getFileName().toString();
        return name.equals("classes")
                || name.startsWith("isoline-")
                || LIBRARIES.stream().anyMatch(library -> name.matches(library + "-[\\d.]+jar"));
    }
}
