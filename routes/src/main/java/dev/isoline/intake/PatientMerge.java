package dev.isoline.intake;

import dev.isoline.attach.Contradictions;
import dev.isoline.attach.MergedPatients;
import dev.isoline.hl7v2fhir.MappedMessage;
import dev.isoline.ledger.OrderTable.OrderRow;
import dev.isoline.ledger.TimelineTable;
import dev.isoline.order.Problem;
import dev.isoline.order.Problem.Kind;
import dev.isoline.order.Vocabulary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.hl7.fhir.r4.model.Coverage;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Resource;

/**
 * ADT^A40 (HL7 v2.5.1 ch. 3.3.40): patients known by the subsumed identifiers become one with the
 * surviving patient. Orders, results and, where the survivor has none, insurance speak of the
 * survivor from then on; the subsumed patient stays where it is, inactive and linked (FHIR R4
 * Patient.link).
 */
final class PatientMerge {

    /** The search parameter by which each type is found for its patient. */
    private static final Map<String, String> FOUND_BY =
            new TreeMap<>(
                    Map.of(
                            "Coverage", "beneficiary",
                            "DiagnosticReport", "subject",
                            "Observation", "subject",
                            "ServiceRequest", "subject",
                            "Task", "patient"));

    private final Known known;
    private final Source source;
    private final String survivor;

    private PatientMerge(Known known, Source source, String survivor) {
        this.known = known;
        this.source = source;
        this.survivor = survivor;
    }

    /**
     * @param survivor id of the surviving patient, stored already
     * @return warnings, in a list to go on with; none where the message merges nobody
     * @throws dev.isoline.order.ContentError when birth date or sex of the two contradict each
     *     other: nothing is merged then
     */
    static List<Problem> merge(Known known, Source source, String survivor, MappedMessage message) {
        var merge = new PatientMerge(known, source, survivor);
        var warnings = new ArrayList<Problem>();
        var priors = new LinkedHashSet<String>();
        for (Identifier identifier : message.subsumed()) {
            var found = merge.knownBy(identifier);
            priors.addAll(found);
            if (found.isEmpty()) {
                warnings.add(unknown());
            }
        }
        for (String prior : priors) {
            PatientRegistry.refuse(merge.contradictions(prior));
            merge.subsume(prior);
        }
        message.subsumed().forEach(merge::keepOld);
        return warnings;
    }

    private List<String> knownBy(Identifier identifier) {
        return PatientRegistry.idsOf(known, List.of(identifier)).stream()
                .filter(id -> !id.equals(survivor))
                .toList();
    }

    private static Problem unknown() {
        return Problem.warning(
                Kind.UNKNOWN_KEY,
                "MRG-1",
                "No other patient is known here by this identifier; it is kept as an old one.");
    }

    private List<Problem> contradictions(String prior) {
        return Contradictions.between(patient(prior), patient(survivor), Vocabulary.HL7_V2);
    }

    private void subsume(String prior) {
        Patient subsumed = patient(prior);
        known.put(MergedPatients.survivor(patient(survivor), subsumed));
        known.put(MergedPatients.replaced(subsumed, patient(survivor)));
        known.tables().orders().byPatient(prior).forEach(this::tell);
        known.tables().orders().subsume(prior, survivor);
        boolean insured = !known.coverages(survivor).isEmpty();
        about(prior).stream()
                .filter(resource -> !(insured && resource instanceof Coverage))
                .forEach(resource -> redirect(resource, prior));
    }

    private void redirect(Resource resource, String prior) {
        Resource moved = resource.copy();
        References.redirect(moved, "Patient/" + prior, "Patient/" + survivor);
        known.put(moved);
    }

    /** What speaks of a patient: what is found by it, and what that leads to. */
    private List<Resource> about(String patient) {
        var found = new LinkedHashMap<String, Resource>();
        FOUND_BY.forEach(
                (type, param) ->
                        known.tables()
                                .resources()
                                .find(type, param, "Patient", patient)
                                .forEach(id -> follow(type + "/" + id, patient, found)));
        return List.copyOf(found.values());
    }

    private void follow(String reference, String patient, Map<String, Resource> found) {
        if (found.containsKey(reference) || reference.startsWith("Patient/")) {
            return;
        }
        known.find(reference)
                .filter(resource -> References.in(resource).contains("Patient/" + patient))
                .ifPresent(
                        resource -> {
                            found.put(reference, resource);
                            References.in(resource).forEach(to -> follow(to, patient, found));
                        });
    }

    private void keepOld(Identifier identifier) {
        known.put(MergedPatients.withOld(patient(survivor), identifier));
    }

    private Patient patient(String id) {
        return known.find(Patient.class, id).orElseThrow();
    }

    private void tell(OrderRow row) {
        known.tables()
                .timeline()
                .add(
                        new TimelineTable.Entry(
                                row.id(),
                                known.at(),
                                "PATIENT_MERGED",
                                source.channel() + ":" + source.sender(),
                                row.state().name()));
    }
}
