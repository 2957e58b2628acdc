package dev.isoline.conformance.validator;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** pydicom as the independent reader of a waveform's samples. */
public final class WaveformReader {

    public static final String NAME = "pydicom";

    public static final String INSTALL = "Debian packages python3-pydicom and python3-numpy";

    private static final TypeReference<Map<String, List<Long>>> POINTS = new TypeReference<>() {};

    private final Optional<ReferenceTool> python = ReferenceTool.pythonWith("pydicom, numpy");

    public boolean installed() {
        return python.isPresent();
    }

    /** Whether pydicom can read the samples of this object at all. */
    public Verdict judge(String name, Path file) {
        if (!installed()) {
            return Verdict.notInstalled(name, NAME, INSTALL);
        }
        try {
            read(file, 1);
            return Verdict.of(name, NAME, List.of());
        } catch (IOException e) {
            return Verdict.of(name, NAME, List.of(Finding.error("(5400,0100)", e.getMessage())));
        }
    }

    /**
     * @param microvoltsPerUnit calibration to compare with
     * @throws IOException with pydicom's own last line when it cannot read the samples
     */
    public Waveform read(Path file, double microvoltsPerUnit) throws IOException {
        Path folder = Files.createTempDirectory("isoline-waveform");
        Path script = folder.resolve("waveform.py");
        Path raw = folder.resolve("samples.raw");
        Path about = folder.resolve("about.json");
        try {
            copyScript(script);
            run(script, file, raw, about, microvoltsPerUnit);
            return waveform(new ObjectMapper().readTree(about.toFile()), raw);
        } finally {
            for (Path path : List.of(script, raw, about, folder)) {
                Files.deleteIfExists(path);
            }
        }
    }

    private static void copyScript(Path to) throws IOException {
        try (InputStream script = WaveformReader.class.getResourceAsStream("waveform.py")) {
            Files.copy(script, to);
        }
    }

    private void run(Path script, Path file, Path raw, Path about, double unit) throws IOException {
        var result =
                python.orElseThrow(() -> new IOException(NAME + " is not installed"))
                        .run(
                                List.of(
                                        script.toString(),
                                        file.toString(),
                                        raw.toString(),
                                        about.toString(),
                                        String.valueOf(unit)));
        if (result.exit() != 0) {
            throw new IOException(lastLine(result.output()));
        }
    }

    private static String lastLine(String output) {
        List<String> lines = output.lines().filter(line -> !line.isBlank()).toList();
        return lines.isEmpty() ? "no reason given" : lines.get(lines.size() - 1);
    }

    private static Waveform waveform(JsonNode about, Path raw) throws IOException {
        return new Waveform(
                about.get("groups").asInt(),
                about.get("channels").asInt(),
                about.get("samples").asLong(),
                about.get("hz").asDouble(),
                about.get("microvoltsOff").asDouble(),
                new ObjectMapper().convertValue(about.get("points"), POINTS),
                Files.readAllBytes(raw));
    }
}
