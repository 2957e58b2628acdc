package dev.isoline.fhirapi;

import ca.uhn.fhir.rest.server.exceptions.InvalidRequestException;
import dev.isoline.intake.Intake;
import dev.isoline.intake.OrderOutcome;
import dev.isoline.intake.Source;
import dev.isoline.ledger.Tables;
import dev.isoline.order.StableId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Resource;

/** Creates and updates, one or many, within one unit of work: all of it or nothing. */
final class ResourceWrites {

    private final Intake intake;

    ResourceWrites(Intake intake) {
        this.intake = intake;
    }

    /**
     * @param base of this server, as the client called it
     * @return in the order of the entries
     */
    List<Written> write(Tables tables, Source source, String base, List<WriteEntry> entries) {
        List<Target> targets = targets(tables, source, entries);
        var resolution = new ReferenceResolution(tables, base, fullUrls(entries, targets));
        List<Resource> resources = new ArrayList<>();
        for (int i = 0; i < entries.size(); i++) {
            if (targets.get(i).action() != Target.Action.KEEP) {
                resources.add(toStore(entries.get(i), targets.get(i), resolution));
            }
        }
        List<OrderOutcome> orders =
                resources.isEmpty()
                        ? List.of()
                        : intake.resources(tables, source, resources, claimed(entries, targets));
        return written(tables, targets, orders);
    }

    /** The unit may run again, so ids must not depend on chance. */
    private static List<Target> targets(Tables tables, Source source, List<WriteEntry> entries) {
        var targets = new ArrayList<Target>();
        var seen = new HashSet<String>();
        for (int i = 0; i < entries.size(); i++) {
            String fallback = StableId.of("message", Long.toString(source.messageId()), "" + i);
            Target target = Target.of(tables, entries.get(i), fallback);
            if (!seen.add(target.reference())) {
                throw sameResource(entries.get(i));
            }
            targets.add(target);
        }
        return targets;
    }

    private static InvalidRequestException sameResource(WriteEntry entry) {
        var outcome =
                ProblemsToOperationOutcome.error(
                        IssueType.INVALID,
                        "Two entries of the transaction are about one resource.");
        outcome.getIssueFirstRep().addExpression(entry.path());
        return new InvalidRequestException("duplicate entry", outcome);
    }

    private static Map<String, String> fullUrls(List<WriteEntry> entries, List<Target> targets) {
        var references = new HashMap<String, String>();
        for (int i = 0; i < entries.size(); i++) {
            String reference = targets.get(i).reference();
            references.put(reference, reference);
            if (!entries.get(i).fullUrl().isEmpty()) {
                references.put(entries.get(i).fullUrl(), reference);
            }
        }
        return references;
    }

    /** What the request says of patients it found by a conditional create. */
    private static List<Patient> claimed(List<WriteEntry> entries, List<Target> targets) {
        var claimed = new ArrayList<Patient>();
        for (int i = 0; i < entries.size(); i++) {
            if (targets.get(i).action() == Target.Action.KEEP
                    && entries.get(i).resource() instanceof Patient patient) {
                Patient found = patient.copy();
                found.setId(targets.get(i).reference());
                claimed.add(found);
            }
        }
        return claimed;
    }

    private static Resource toStore(
            WriteEntry entry, Target target, ReferenceResolution resolution) {
        Resource resource = entry.resource().copy();
        resource.setId(target.reference());
        resolution.resolve(resource, entry.path());
        return resource;
    }

    private static List<Written> written(
            Tables tables, List<Target> targets, List<OrderOutcome> orders) {
        var byReference =
                orders.stream().collect(Collectors.groupingBy(o -> answeringFor(o, targets)));
        return IntStream.range(0, targets.size())
                .mapToObj(
                        i -> {
                            Target target = targets.get(i);
                            return new Written(
                                    target.action() == Target.Action.CREATE,
                                    tables.resources()
                                            .get(target.type(), target.id())
                                            .orElseThrow(),
                                    byReference.getOrDefault(i, List.of()));
                        })
                .toList();
    }

    /** The entry of the order itself; the first one when the request only touched the order. */
    private static int answeringFor(OrderOutcome order, List<Target> targets) {
        return IntStream.range(0, targets.size())
                .filter(i -> targets.get(i).reference().equals("ServiceRequest/" + order.orderId()))
                .findFirst()
                .orElse(0);
    }
}
