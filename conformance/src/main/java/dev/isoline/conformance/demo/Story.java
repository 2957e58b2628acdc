package dev.isoline.conformance.demo;

import java.io.PrintWriter;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/** Tells what happens, line by line, and remembers what did not hold. */
final class Story {

    private final PrintWriter out;
    private final long began = System.nanoTime();
    private final List<String> failures = new ArrayList<>();

    Story(PrintWriter out) {
        this.out = out;
    }

    void tell(String line, Object... parts) {
        double seconds = Duration.ofNanos(System.nanoTime() - began).toMillis() / 1000.0;
        out.printf("%6.1f s  %s%n", seconds, line.formatted(parts));
        out.flush();
    }

    /** Detail below the last line. */
    void add(String line, Object... parts) {
        out.println("          " + line.formatted(parts));
        out.flush();
    }

    void fail(String what, Object... parts) {
        failures.add(what.formatted(parts));
        add("FAILED: " + what, parts);
    }

    void expect(boolean held, String what, Object... parts) {
        if (!held) {
            fail(what, parts);
        }
    }

    List<String> failures() {
        return List.copyOf(failures);
    }
}
