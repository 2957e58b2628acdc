package dev.isoline.worklist;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.abort;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;

/** DCMTK's findscu, asking for worklist items; it prints what it is told. */
record Findscu(int port, String called) {

    private static final Path PROGRAM = Path.of("/usr/bin/findscu");

    /**
     * What it printed.
     *
     * @param text every byte as one character
     */
    record Output(String text) {

        /** Values of an element, in the order of the responses. */
        List<String> values(String tag) {
            return Pattern.compile("\\(" + tag + "\\) .. \\[([^\\]]*)\\]")
                    .matcher(text.substring(Math.max(0, text.indexOf("Find Response:"))))
                    .results()
                    .map(found -> found.group(1).replace("\0", "").strip())
                    .toList();
        }

        List<String> utf8(String tag) {
            return values(tag).stream()
                    .map(v -> v.getBytes(StandardCharsets.ISO_8859_1))
                    .map(bytes -> new String(bytes, StandardCharsets.UTF_8))
                    .toList();
        }

        long responses() {
            return Pattern.compile("(?m)^\\w: Find Response: ").matcher(text).results().count();
        }
    }

    static void require() {
        if (!Files.isExecutable(PROGRAM)) {
            String message = "findscu is not installed (Debian: dcmtk)";
            if ("required".equals(System.getenv("ISOLINE_CHECKERS"))) {
                fail(message);
            }
            abort(message);
        }
    }

    /**
     * @param words options and keys, such as {@code -xi} or {@code (0010,0020)=4711}
     */
    Output ask(String... words) throws IOException, InterruptedException {
        var command = new ArrayList<>(List.of(PROGRAM.toString(), "-v", "-W"));
        command.addAll(List.of("-aet", "RECORDER", "-aec", called, "-to", "10"));
        for (String word : words) {
            if (word.startsWith("-")) {
                command.addAll(List.of(word.split(" ")));
            } else {
                command.addAll(List.of("-k", word));
            }
        }
        command.addAll(List.of("127.0.0.1", Integer.toString(port)));
        Path log = Files.createTempFile("isoline-findscu", ".txt");
        try {
            var process =
                    new ProcessBuilder(command)
                            .redirectErrorStream(true)
                            .redirectOutput(log.toFile())
                            .start();
            boolean ended = process.waitFor(30, TimeUnit.SECONDS);
            process.destroyForcibly();
            String text = Files.readString(log, StandardCharsets.ISO_8859_1);
            assertTrue(ended, () -> "findscu did not end: " + text);
            return new Output(text);
        } finally {
            Files.delete(log);
        }
    }
}
