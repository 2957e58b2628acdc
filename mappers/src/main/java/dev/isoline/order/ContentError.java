package dev.isoline.order;

import java.util.List;

/** A message or resource is refused; the problems say why. Carries no patient detail. */
public final class ContentError extends RuntimeException {

    private static final long serialVersionUID = 1;

    private final transient List<Problem> problems;

    public ContentError(List<Problem> problems) {
        super(problems.isEmpty() ? "refused" : problems.get(0).text());
        this.problems = List.copyOf(problems);
    }

    public ContentError(Problem problem) {
        this(List.of(problem));
    }

    public List<Problem> problems() {
        return problems;
    }
}
