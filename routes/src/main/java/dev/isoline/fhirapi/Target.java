package dev.isoline.fhirapi;

import ca.uhn.fhir.rest.server.exceptions.BaseServerResponseException;
import ca.uhn.fhir.rest.server.exceptions.MethodNotAllowedException;
import ca.uhn.fhir.rest.server.exceptions.PreconditionFailedException;
import dev.isoline.fhir.BusinessIdentifier;
import dev.isoline.ledger.ResourceTable.StoredResource;
import dev.isoline.ledger.Tables;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import dev.isoline.order.StableId;
import dev.isoline.resources.SearchCondition;
import dev.isoline.resources.SearchIndex;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;

/**
 * The stored resource an entry is about.
 *
 * @param action what is to be done to it
 */
record Target(String type, String id, Action action) {

    enum Action {
        CREATE,
        UPDATE,
        /** A conditional create found it: nothing is written. */
        KEEP
    }

    /**
     * Finds what the entry is about, or the id it gets.
     *
     * @param fallback id of a new resource that has no business identifier
     */
    static Target of(Tables tables, WriteEntry entry, String fallback) {
        Target target = find(tables, entry, fallback);
        identifiersAreFree(tables, entry, target);
        return target;
    }

    String reference() {
        return type + "/" + id;
    }

    private static Target find(Tables tables, WriteEntry entry, String fallback) {
        if (entry.update() && entry.condition().isEmpty()) {
            return known(tables, entry);
        }
        List<StoredResource> matches = matches(tables, entry);
        if (matches.size() > 1) {
            throw precondition(entry, "The condition matches more than one resource.");
        }
        if (matches.isEmpty()) {
            return new Target(entry.type(), newId(entry, fallback), Action.CREATE);
        }
        var match = matches.get(0);
        if (entry.update()) {
            versionMatches(entry, match);
        }
        return new Target(entry.type(), match.id(), entry.update() ? Action.UPDATE : Action.KEEP);
    }

    private static Target known(Tables tables, WriteEntry entry) {
        var stored =
                tables.resources()
                        .get(entry.type(), entry.id())
                        .orElseThrow(
                                () ->
                                        outcome(
                                                new MethodNotAllowedException("unknown id"),
                                                entry,
                                                "There is no resource of this id, and ids are given by this server: create it, or update it by identifier."));
        versionMatches(entry, stored);
        return new Target(entry.type(), entry.id(), Action.UPDATE);
    }

    private static List<StoredResource> matches(Tables tables, WriteEntry entry) {
        return entry.condition().isEmpty()
                ? List.of()
                : tables.resources()
                        .search(
                                entry.type(),
                                SearchCondition.parse(entry.type(), entry.condition()),
                                0,
                                2);
    }

    private static void versionMatches(WriteEntry entry, StoredResource stored) {
        if (!entry.ifMatch().isEmpty()
                && !entry.ifMatch().equals(Integer.toString(stored.version()))) {
            throw precondition(entry, "The resource has changed since the version in If-Match.");
        }
    }

    /** Recognised by an identifier, whichever protocol it came by, and not taken without one. */
    private static boolean isRecognised(Resource resource) {
        return resource instanceof Patient || resource instanceof ServiceRequest;
    }

    private static String newId(WriteEntry entry, String fallback) {
        return Optional.of(entry.resource())
                .filter(Target::isRecognised)
                .flatMap(BusinessIdentifier::find)
                .map(i -> StableId.of(entry.type(), i.getSystem(), i.getValue()))
                .orElseGet(() -> withoutIdentifier(entry, fallback));
    }

    private static String withoutIdentifier(WriteEntry entry, String fallback) {
        if (!isRecognised(entry.resource())) {
            return fallback;
        }
        throw new ContentError(
                Problem.error(
                        Problem.Kind.REQUIRED,
                        entry.path() + ".identifier",
                        "An identifier with system and value is required: it is what a "
                                + entry.type()
                                + " is recognised by."));
    }

    /** A patient or order is one resource, however often it is sent. */
    private static void identifiersAreFree(Tables tables, WriteEntry entry, Target target) {
        List<Identifier> identifiers =
                isRecognised(entry.resource())
                        ? BusinessIdentifier.usable(entry.resource())
                        : List.of();
        for (int i = 0; i < identifiers.size() && target.action() != Action.KEEP; i++) {
            for (String holder : holders(tables, target.type(), identifiers.get(i))) {
                if (target.action() == Action.CREATE || !holder.equals(target.id())) {
                    throw duplicate(entry, i);
                }
            }
        }
    }

    private static List<String> holders(Tables tables, String type, Identifier identifier) {
        return tables.resources()
                .find(type, SearchIndex.IDENTIFIER, identifier.getSystem(), identifier.getValue());
    }

    private static ContentError duplicate(WriteEntry entry, int identifier) {
        return new ContentError(
                Problem.error(
                        Problem.Kind.DUPLICATE_KEY,
                        entry.path() + ".identifier[" + identifier + "]",
                        "Another "
                                + entry.type()
                                + " has this identifier: use conditional create (If-None-Exist) or conditional update (PUT with ?identifier=)."));
    }

    private static BaseServerResponseException precondition(WriteEntry entry, String text) {
        return outcome(new PreconditionFailedException("precondition"), entry, text);
    }

    private static BaseServerResponseException outcome(
            BaseServerResponseException refusal, WriteEntry entry, String text) {
        var outcome = ProblemsToOperationOutcome.error(IssueType.PROCESSING, text);
        outcome.getIssueFirstRep().addExpression(entry.path());
        refusal.setOperationOutcome(outcome);
        return refusal;
    }
}
