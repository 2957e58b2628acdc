package dev.isoline.order;

import java.util.List;
import java.util.Set;

/** What is still missing before an order can be acted on. */
public final class Completeness {

    private Completeness() {}

    /** One problem per missing item, in the order of {@link Requirement}; empty when complete. */
    public static List<Problem> missing(
            Set<Requirement> required, Set<Requirement> present, Vocabulary vocabulary) {
        return required.stream()
                .filter(item -> !present.contains(item))
                .sorted()
                .map(item -> problem(item, vocabulary))
                .toList();
    }

    private static Problem problem(Requirement item, Vocabulary vocabulary) {
        return Problem.error(Problem.Kind.REQUIRED, item.location(vocabulary), item.text());
    }
}
