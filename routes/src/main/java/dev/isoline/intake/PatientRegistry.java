package dev.isoline.intake;

import dev.isoline.attach.Contradictions;
import dev.isoline.attach.CoverageSnapshot;
import dev.isoline.attach.PatientUpdate;
import dev.isoline.hl7v2fhir.PatientRecord;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import dev.isoline.order.Vocabulary;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Coverage;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Patient;

/** Patients and their insurance, matched on identifier and assigning authority only. */
final class PatientRegistry {

    /**
     * @param contradictions why the message must not change what is known; empty when it may
     */
    record Match(String patientId, List<Problem> contradictions) {}

    private PatientRegistry() {}

    /** Whom the record is about: a known patient, or the record's own id for a new one. */
    static Match match(Known known, Patient incoming, Vocabulary vocabulary) {
        List<String> ids = idsOf(known, incoming.getIdentifier());
        String own = incoming.getIdElement().getIdPart();
        if (ids.size() > 1) {
            return new Match(ids.contains(own) ? own : ids.get(0), List.of(ambiguous(vocabulary)));
        }
        return ids.stream()
                .findFirst()
                .flatMap(id -> known.find(Patient.class, id))
                .map(
                        stored ->
                                new Match(
                                        stored.getIdElement().getIdPart(),
                                        Contradictions.between(stored, incoming, vocabulary)))
                .orElse(new Match(own, List.of()));
    }

    /** Stores what a record tells about the matched patient. */
    static void store(Known known, PatientRecord record, String patientId) {
        adopt(record, patientId);
        Optional<Patient> stored = known.find(Patient.class, patientId);
        known.put(
                stored.map(s -> PatientUpdate.merge(s, record.patient(), record.cleared()))
                        .orElse(record.patient()));
        record.related().forEach(known::put);
        CoverageSnapshot.replace(known.coverages(patientId), record.coverages())
                .forEach(known::put);
    }

    /** Coverages in force, first to pay first. */
    static List<Coverage> coverages(Known known, String patientId) {
        return CoverageSnapshot.active(known.coverages(patientId));
    }

    /** Makes the record's resources speak of the stored patient. */
    static void adopt(PatientRecord record, String patientId) {
        String own = References.to(record.patient());
        String stored = "Patient/" + patientId;
        if (!own.equals(stored)) {
            record.patient().setId(patientId);
            record.coverages().forEach(coverage -> References.redirect(coverage, own, stored));
            record.related().forEach(resource -> References.redirect(resource, own, stored));
        }
    }

    static void refuse(List<Problem> contradictions) {
        if (!contradictions.isEmpty()) {
            throw new ContentError(contradictions);
        }
    }

    /** Patients known by one of the identifiers. */
    static List<String> idsOf(Known known, List<Identifier> identifiers) {
        var ids = new LinkedHashSet<String>();
        for (Identifier identifier : identifiers) {
            if (identifier.hasSystem() && identifier.hasValue()) {
                ids.addAll(
                        known.tables()
                                .resources()
                                .find(
                                        "Patient",
                                        "identifier",
                                        identifier.getSystem(),
                                        identifier.getValue()));
            }
        }
        return List.copyOf(ids);
    }

    private static Problem ambiguous(Vocabulary vocabulary) {
        return Problem.error(
                Problem.Kind.CONFLICT,
                vocabulary == Vocabulary.HL7_V2 ? "PID-3" : "Patient.identifier",
                "The identifiers belong to different patients known here.");
    }
}
