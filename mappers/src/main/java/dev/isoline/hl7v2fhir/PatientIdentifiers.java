package dev.isoline.hl7v2fhir;

import ca.uhn.hl7v2.model.v251.datatype.CX;
import ca.uhn.hl7v2.model.v251.segment.PID;
import dev.isoline.hl7v2fhir.datatype.CxToIdentifier;
import dev.isoline.hl7v2fhir.datatype.IdentifierSystems;
import dev.isoline.hl7v2fhir.datatype.Reading;
import dev.isoline.hl7v2fhir.table.Table0203;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Identifier;

/**
 * PID-2, PID-3 and PID-4 (HL7 v2.5.1 ch. 3.4.2) to the identifiers of a patient, the medical record
 * number that names the patient first.
 */
final class PatientIdentifiers {

    private final Reading in;

    private PatientIdentifiers(Reading in) {
        this.in = in;
    }

    /** Refuses a message without any identifier whose authority is known. */
    static List<Identifier> of(PID pid, Reading in) {
        return new PatientIdentifiers(in).read(pid);
    }

    private List<Identifier> read(PID pid) {
        List<Identifier> list = list(pid);
        if (list.isEmpty()) {
            throw new ContentError(
                    Problem.error(
                            Problem.Kind.REQUIRED,
                            "PID-3",
                            "A patient identifier with its assigning authority is required."));
        }
        Identifier record = list.stream().min(Comparator.comparingInt(this::rank)).orElseThrow();
        if (!record.hasType()) {
            record.setType(Table0203.toFhir("MR"));
            in.at("PID-3").note(5, "taken as medical record number: the identifier names no type");
        }
        list.remove(record);
        list.add(0, record);
        return list;
    }

    private List<Identifier> list(PID pid) {
        var list = new ArrayList<Identifier>();
        for (CX cx : pid.getPid3_PatientIdentifierList()) {
            of(cx, "PID-3", true, in).ifPresent(i -> addOnce(list, i));
        }
        boolean alone = list.isEmpty();
        of(pid.getPid2_PatientID(), "PID-2", alone, in).ifPresent(i -> addOnce(list, i));
        for (CX cx : pid.getPid4_AlternatePatientIDPID()) {
            of(cx, "PID-4", false, in).ifPresent(i -> addOnce(list, i));
        }
        return list;
    }

    /**
     * Empty, with a note, where nobody says whose number it is.
     *
     * @param useDefault whether the sender's default authority may be meant
     */
    static Optional<Identifier> of(CX cx, String field, boolean useDefault, Reading in) {
        Optional<Identifier> identifier = CxToIdentifier.map(cx, in.at(field));
        String fallback = useDefault ? in.systems().defaultAuthority() : "";
        identifier
                .filter(i -> !i.hasSystem() && !fallback.isEmpty())
                .ifPresent(i -> i.setSystem(fallback));
        if (identifier.isPresent() && !identifier.get().hasSystem()) {
            in.note(4, "left out: an identifier without an assigning authority names nobody");
            return Optional.empty();
        }
        return identifier;
    }

    private static void addOnce(List<Identifier> list, Identifier identifier) {
        boolean known =
                list.stream()
                        .anyMatch(
                                i ->
                                        i.getSystem().equals(identifier.getSystem())
                                                && i.getValue().equals(identifier.getValue()));
        if (!known) {
            list.add(identifier);
        }
    }

    /**
     * The record number of a configured authority, any record number, one without type, the rest.
     */
    private int rank(Identifier identifier) {
        IdentifierSystems systems = in.systems();
        if (isRecordNumber(identifier)) {
            return systems.isConfigured(identifier.getSystem()) ? 0 : 1;
        }
        return identifier.hasType() ? 3 : 2;
    }

    private static boolean isRecordNumber(Identifier identifier) {
        return identifier.getType().hasCoding(Table0203.SYSTEM, "MR");
    }
}
