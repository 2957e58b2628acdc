package dev.isoline.conformance.cli;

import dev.isoline.conformance.validator.Verdict;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;

/** How verdicts are printed. */
enum VerdictFormat {
    text {
        @Override
        void write(List<Verdict> verdicts, PrintWriter out) {
            VerdictText.write(verdicts, out);
        }
    },
    json {
        @Override
        void write(List<Verdict> verdicts, PrintWriter out) throws IOException {
            out.println(Json.pretty(verdicts));
        }
    },
    junit {
        @Override
        void write(List<Verdict> verdicts, PrintWriter out) throws IOException {
            VerdictJunit.write(verdicts, out);
        }
    };

    abstract void write(List<Verdict> verdicts, PrintWriter out) throws IOException;
}
