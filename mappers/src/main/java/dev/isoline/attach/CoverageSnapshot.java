package dev.isoline.attach;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.Coverage;
import org.hl7.fhir.r4.model.Coverage.CoverageStatus;

/** Insurance is told as a whole: what a message lists replaces what was known before. */
public final class CoverageSnapshot {

    private CoverageSnapshot() {}

    /**
     * What to store: the incoming coverages as they are and, cancelled, those known that are not
     * among them (by id). Nothing when the message says nothing about insurance.
     */
    public static List<Coverage> replace(List<Coverage> stored, List<Coverage> incoming) {
        if (incoming.isEmpty()) {
            return List.of();
        }
        Set<String> told = incoming.stream().map(CoverageSnapshot::id).collect(Collectors.toSet());
        var changed = new ArrayList<>(incoming);
        stored.stream()
                .filter(c -> !told.contains(id(c)) && c.getStatus() == CoverageStatus.ACTIVE)
                .map(c -> c.copy().setStatus(CoverageStatus.CANCELLED))
                .forEach(changed::add);
        return changed;
    }

    /** The active coverage that pays first: lowest {@code order}, else first of the list. */
    public static Optional<Coverage> primary(List<Coverage> coverages) {
        return active(coverages).stream().findFirst();
    }

    /** The active ones, the one that pays first in front. */
    public static List<Coverage> active(List<Coverage> coverages) {
        return coverages.stream()
                .filter(c -> c.getStatus() == CoverageStatus.ACTIVE)
                .sorted(
                        Comparator.comparingInt(
                                c -> c.hasOrder() ? c.getOrder() : Integer.MAX_VALUE))
                .toList();
    }

    private static String id(Coverage coverage) {
        return coverage.getIdElement().getIdPart();
    }
}
