package dev.isoline.cli;

import static dev.isoline.cli.TextLines.format;

import dev.isoline.ecg.RecordingHeader;
import java.io.PrintWriter;
import java.time.Duration;
import java.util.function.LongSupplier;

/**
 * How far a recording has been read, told once a second: on a terminal in one line, which is wiped
 * at the end, elsewhere as lines.
 */
final class Progress {

    /** The launcher sets it when standard output and standard error are terminals. */
    private static final String ON_TERMINAL = "isoline.terminal";

    private static final long SECOND = Duration.ofSeconds(1).toNanos();

    private final PrintWriter err;
    private final boolean terminal;
    private final LongSupplier nanos;
    private long next;
    private int width;

    Progress(PrintWriter err, boolean terminal, LongSupplier nanos) {
        this.err = err;
        this.terminal = terminal;
        this.nanos = nanos;
        this.next = nanos.getAsLong() + SECOND;
    }

    /** Whether anyone is to be told: asked for, or somebody looks on. */
    static boolean wanted(boolean asked) {
        return asked || Boolean.getBoolean(ON_TERMINAL);
    }

    static Progress on(PrintWriter err) {
        return new Progress(err, Boolean.getBoolean(ON_TERMINAL), System::nanoTime);
    }

    void read(long samples, RecordingHeader header) {
        long now = nanos.getAsLong();
        if (now - next >= 0) {
            next = now + SECOND;
            tell(words(samples, header));
        }
    }

    private static String words(long samples, RecordingHeader header) {
        String read = hours(samples / header.hz());
        return header.samples() <= 0
                ? "read " + read
                : format(
                        "read %s of %s, %d %%",
                        read,
                        hours(header.samples() / header.hz()),
                        Math.min(100, 100 * samples / header.samples()));
    }

    private static String hours(double seconds) {
        long minutes = (long) (seconds / 60);
        return format("%d h %02d min", minutes / 60, minutes % 60);
    }

    private void tell(String words) {
        if (terminal) {
            err.print("\r" + words + " ".repeat(Math.max(0, width - words.length())));
            width = words.length();
        } else {
            err.println(words);
        }
        err.flush();
    }

    /** Leaves no line behind on a terminal. */
    void end() {
        if (terminal && width > 0) {
            err.print("\r" + " ".repeat(width) + "\r");
            err.flush();
        }
    }
}
