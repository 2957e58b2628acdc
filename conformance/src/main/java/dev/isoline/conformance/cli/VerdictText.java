package dev.isoline.conformance.cli;

import dev.isoline.conformance.validator.Finding;
import dev.isoline.conformance.validator.Verdict;
import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;

/** One line a verdict, its findings below it. */
final class VerdictText {

    private VerdictText() {}

    static void write(List<Verdict> verdicts, PrintWriter out) {
        for (Verdict verdict : verdicts) {
            out.printf("%-11s %s (%s)%n", word(verdict), verdict.file(), verdict.judge());
            verdict.findings().forEach(finding -> out.println("    " + line(finding)));
        }
    }

    private static String word(Verdict verdict) {
        return switch (verdict.outcome()) {
            case PASSED -> "ok";
            case FAILED -> "WRONG";
            case NOT_CHECKED -> "not checked";
        };
    }

    static String line(Finding finding) {
        String place = finding.place().isEmpty() ? "" : finding.place() + ": ";
        return finding.severity().name().toLowerCase(Locale.ROOT) + ": " + place + finding.text();
    }
}
