package dev.isoline.ecgdicom;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/** Debian's dciodvfy (dicom3tools), pydicom and biosig-tools: judges we did not write. */
public final class Checkers {

    private static final String PYTHON = "/usr/bin/python3";

    private Checkers() {}

    /** Lines of dciodvfy that begin with Error; it may exit 0 in spite of them. */
    public static List<String> dciodvfyErrors(Path file) throws IOException, InterruptedException {
        return dciodvfyErrors("AmbulatoryECG", file);
    }

    /**
     * @param iod the IOD dciodvfy has to take the object for
     */
    public static List<String> dciodvfyErrors(String iod, Path file)
            throws IOException, InterruptedException {
        require("dicom3tools", "dciodvfy", "-version");
        String output = output(new ProcessBuilder("dciodvfy", file.toString()));
        Assertions.assertTrue(output.lines().anyMatch(iod::equals), output);
        return output.lines().filter(line -> line.startsWith("Error")).toList();
    }

    /** What a Python script prints; a failing one fails the test with what it says. */
    public static String python(String script) throws IOException, InterruptedException {
        require("python3-pydicom", PYTHON, "-c", "import pydicom, numpy");
        Path file = Files.createTempFile("isoline", ".py");
        try {
            Files.writeString(file, script);
            return output(new ProcessBuilder(PYTHON, "-W", "ignore", file.toString())).strip();
        } finally {
            Files.delete(file);
        }
    }

    /**
     * What save2gdf of libbiosig prints.
     *
     * @param source read; a target has to be named, for a single file is taken for the target
     */
    public static String save2gdf(String option, Path source, Path target)
            throws IOException, InterruptedException {
        require("biosig-tools", "save2gdf", "--version");
        return output(new ProcessBuilder("save2gdf", option, source.toString(), target.toString()));
    }

    private static String output(ProcessBuilder builder) throws IOException, InterruptedException {
        Process process = builder.redirectErrorStream(true).start();
        byte[] output = process.getInputStream().readAllBytes();
        String text = new String(output, StandardCharsets.UTF_8);
        boolean script = builder.command().get(0).equals(PYTHON);
        int exit = process.waitFor();
        Assertions.assertTrue(!script || exit == 0, text);
        return text;
    }

    private static void require(String debian, String... command) throws InterruptedException {
        boolean present;
        try {
            var builder = new ProcessBuilder(command).redirectErrorStream(true);
            Process process = builder.redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
            present = process.waitFor() == 0 || !command[0].equals(PYTHON);
        } catch (IOException e) {
            present = false;
        }
        boolean required =
                "required".equals(System.getenv("ISOLINE_CHECKERS"))
                        || "required".equals(System.getProperty("ISOLINE_CHECKERS"));
        Assertions.assertTrue(present || !required, debian + " is required but not installed");
        Assumptions.assumeTrue(present, debian + " is not installed");
    }
}
