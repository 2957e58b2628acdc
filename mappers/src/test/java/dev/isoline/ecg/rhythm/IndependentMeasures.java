package dev.isoline.ecg.rhythm;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/**
 * What measures-of-annotations.py says of annotation files: python3 and numpy, none of our code.
 */
final class IndependentMeasures {

    private static final String PYTHON = "/usr/bin/python3";
    private static final String SCRIPT = "measures-of-annotations.py";

    private IndependentMeasures() {}

    /** By file name, each measure by its name. */
    static Map<String, Map<String, Double>> of(
            Path folder, double hz, long samples, List<Path> files)
            throws IOException, InterruptedException {
        require();
        Path script = folder.resolve(SCRIPT);
        try (InputStream in = IndependentMeasures.class.getResourceAsStream(SCRIPT)) {
            Files.copy(in, script, StandardCopyOption.REPLACE_EXISTING);
        }
        var command = new ArrayList<>(List.of(PYTHON, script.toString()));
        command.addAll(List.of(String.valueOf(hz), String.valueOf(samples)));
        files.forEach(file -> command.add(file.toString()));
        return parsed(output(command));
    }

    private static Map<String, Map<String, Double>> parsed(String output) {
        var all = new LinkedHashMap<String, Map<String, Double>>();
        Map<String, Double> measures = Map.of();
        for (String line : output.lines().toList()) {
            String[] parts = line.split(" ");
            if (parts[0].equals("file")) {
                measures = new TreeMap<>();
                all.put(parts[1], measures);
            } else {
                measures.put(parts[0], Double.valueOf(parts[1]));
            }
        }
        return all;
    }

    private static String output(List<String> command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        Assertions.assertEquals(0, process.waitFor(), text);
        return text;
    }

    private static void require() throws InterruptedException {
        boolean present;
        try {
            var builder = new ProcessBuilder(PYTHON, "-c", "import numpy");
            present = builder.redirectErrorStream(true).start().waitFor() == 0;
        } catch (IOException e) {
            present = false;
        }
        boolean required =
                "required".equals(System.getenv("ISOLINE_CHECKERS"))
                        || "required".equals(System.getProperty("ISOLINE_CHECKERS"));
        Assertions.assertTrue(present || !required, "python3-numpy is required but not installed");
        Assumptions.assumeTrue(present, "python3-numpy is not installed");
    }
}
