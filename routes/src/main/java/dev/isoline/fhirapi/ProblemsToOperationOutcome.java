package dev.isoline.fhirapi;

import dev.isoline.order.Problem;
import java.util.List;
import java.util.Map;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.hl7.fhir.r4.model.OperationOutcome.IssueSeverity;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;

/** Problems to OperationOutcome (FHIR R4, 2.40): kinds become issue-type, locations expression. */
public final class ProblemsToOperationOutcome {

    // spotless:off
    private static final Map<Problem.Kind, IssueType> TYPES = Map.ofEntries(
            Map.entry(Problem.Kind.SEQUENCE,                  IssueType.STRUCTURE),
            Map.entry(Problem.Kind.REQUIRED,                  IssueType.REQUIRED),
            Map.entry(Problem.Kind.DATA_TYPE,                 IssueType.VALUE),
            Map.entry(Problem.Kind.VALUE,                     IssueType.VALUE),
            Map.entry(Problem.Kind.UNSUPPORTED_MESSAGE,       IssueType.NOTSUPPORTED),
            Map.entry(Problem.Kind.UNSUPPORTED_EVENT,         IssueType.NOTSUPPORTED),
            Map.entry(Problem.Kind.UNSUPPORTED_PROCESSING_ID, IssueType.NOTSUPPORTED),
            Map.entry(Problem.Kind.UNSUPPORTED_VERSION,       IssueType.NOTSUPPORTED),
            Map.entry(Problem.Kind.UNKNOWN_KEY,               IssueType.NOTFOUND),
            Map.entry(Problem.Kind.DUPLICATE_KEY,             IssueType.DUPLICATE),
            Map.entry(Problem.Kind.CONFLICT,                  IssueType.CONFLICT),
            Map.entry(Problem.Kind.INTERNAL,                  IssueType.EXCEPTION));
    // spotless:on

    private ProblemsToOperationOutcome() {}

    /** Why a request was refused. */
    public static OperationOutcome refused(List<Problem> problems) {
        var outcome = new OperationOutcome();
        problems.forEach(p -> issue(outcome, p, severity(p.severity())));
        return outcome;
    }

    /** What is still wrong with a request that was carried out: nothing here is an error. */
    public static OperationOutcome accepted(List<Problem> problems) {
        var outcome = new OperationOutcome();
        for (Problem problem : problems) {
            boolean told = problem.severity() == Problem.Severity.INFORMATION;
            issue(outcome, problem, told ? IssueSeverity.INFORMATION : IssueSeverity.WARNING);
        }
        return outcome;
    }

    static OperationOutcome error(IssueType type, String text) {
        var outcome = new OperationOutcome();
        outcome.addIssue().setSeverity(IssueSeverity.ERROR).setCode(type).setDiagnostics(text);
        return outcome;
    }

    private static void issue(OperationOutcome outcome, Problem problem, IssueSeverity severity) {
        var issue =
                outcome.addIssue()
                        .setSeverity(severity)
                        .setCode(TYPES.get(problem.kind()))
                        .setDiagnostics(problem.text());
        if (!problem.location().isEmpty()) {
            issue.addExpression(problem.location());
        }
    }

    private static IssueSeverity severity(Problem.Severity severity) {
        return IssueSeverity.fromCode(severity.name().toLowerCase(java.util.Locale.ROOT));
    }
}
