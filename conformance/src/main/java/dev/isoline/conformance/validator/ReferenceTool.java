package dev.isoline.conformance.validator;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** A program of somebody else that judges a file. */
final class ReferenceTool {

    private static final long SECONDS = 120;

    /**
     * @param output standard output and error, as they came
     */
    record Result(int exit, String output) {}

    private final Path program;

    private ReferenceTool(Path program) {
        this.program = program;
    }

    /** Whether a missing tool is a failure: system property or environment. */
    static boolean required() {
        String setting = System.getProperty("ISOLINE_CHECKERS", System.getenv("ISOLINE_CHECKERS"));
        return "required".equals(setting);
    }

    static Optional<ReferenceTool> find(String name) {
        for (String folder : System.getenv().getOrDefault("PATH", "").split(File.pathSeparator)) {
            Path program = Path.of(folder, name);
            if (Files.isExecutable(program)) {
                return Optional.of(new ReferenceTool(program));
            }
        }
        return Optional.empty();
    }

    /** Debian's own Python first: that is where its packages are. */
    static Optional<ReferenceTool> pythonWith(String module) {
        Path debian = Path.of("/usr/bin/python3");
        var python =
                Files.isExecutable(debian)
                        ? Optional.of(new ReferenceTool(debian))
                        : find("python3");
        return python.filter(p -> p.run(List.of("-c", "import " + module)).exit() == 0);
    }

    Result run(List<String> arguments) {
        var command = new ArrayList<>(List.of(program.toString()));
        command.addAll(arguments);
        try {
            return run(new ProcessBuilder(command).redirectErrorStream(true));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The output goes through a file, so that a full pipe cannot stop the program. */
    private static Result run(ProcessBuilder builder) throws IOException {
        Path output = Files.createTempFile("isoline-check", ".txt");
        try {
            Process process = builder.redirectOutput(output.toFile()).start();
            if (!finished(process)) {
                process.destroyForcibly();
                return new Result(-1, "no answer within " + SECONDS + " s");
            }
            return new Result(
                    process.exitValue(),
                    new String(Files.readAllBytes(output), StandardCharsets.UTF_8));
        } finally {
            Files.delete(output);
        }
    }

    private static boolean finished(Process process) {
        try {
            return process.waitFor(SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
