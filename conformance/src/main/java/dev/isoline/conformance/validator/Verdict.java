package dev.isoline.conformance.validator;

import java.util.List;

/**
 * What one judge says of one file.
 *
 * @param judge the reference implementation
 * @param outcome {@code NOT_CHECKED} is not a pass
 */
public record Verdict(String file, String judge, Outcome outcome, List<Finding> findings) {

    public enum Outcome {
        PASSED,
        FAILED,
        NOT_CHECKED
    }

    static Verdict of(String file, String judge, List<Finding> findings) {
        boolean failed = findings.stream().anyMatch(Finding::isError);
        return new Verdict(file, judge, failed ? Outcome.FAILED : Outcome.PASSED, findings);
    }

    /**
     * The judge is not installed: a failure where {@code ISOLINE_CHECKERS=required}, else the file
     * counts as not checked.
     */
    static Verdict notInstalled(String file, String judge, String install) {
        String text = judge + " is not installed (" + install + ")";
        return ReferenceTool.required()
                ? new Verdict(file, judge, Outcome.FAILED, List.of(Finding.error("", text)))
                : new Verdict(file, judge, Outcome.NOT_CHECKED, List.of(Finding.warning("", text)));
    }

    public boolean failed() {
        return outcome == Outcome.FAILED;
    }
}
