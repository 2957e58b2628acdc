package dev.isoline.dicom.peer;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assertions;

/** A program of DCMTK, or another one, run to its end. */
public final class Tool {

    private static final int SECONDS = 60;

    private Tool() {}

    /**
     * What it said and how it ended.
     *
     * @param exit exit code
     * @param output standard output and error together
     */
    public record Result(int exit, String output) {

        /** Fails the test where the program did. */
        public Result succeeded() {
            Assertions.assertEquals(0, exit, output);
            return this;
        }
    }

    /** Runs a program of DCMTK. */
    public static Result dcmtk(String name, Object... arguments) throws IOException {
        return run(Checker.program(name, "dcmtk"), arguments);
    }

    public static Result run(String program, Object... arguments) throws IOException {
        var command = new ArrayList<>(List.of(program));
        for (Object argument : arguments) {
            command.add(argument.toString());
        }
        Path output = Files.createTempFile("isoline-tool", ".txt");
        try {
            Process process =
                    new ProcessBuilder(command)
                            .redirectErrorStream(true)
                            .redirectOutput(output.toFile())
                            .start();
            process.getOutputStream().close();
            boolean ended = wait(process);
            String text = Files.readString(output, StandardCharsets.ISO_8859_1);
            Assertions.assertTrue(ended, () -> program + " did not end: " + text);
            return new Result(process.exitValue(), text);
        } finally {
            Files.delete(output);
        }
    }

    private static boolean wait(Process process) {
        try {
            if (process.waitFor(SECONDS, TimeUnit.SECONDS)) {
                return true;
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        process.destroyForcibly();
        return false;
    }
}
