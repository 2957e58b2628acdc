package dev.isoline.hl7v2fhir;

import ca.uhn.hl7v2.model.v251.datatype.CX;
import ca.uhn.hl7v2.model.v251.segment.MRG;
import dev.isoline.hl7v2fhir.datatype.Reading;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import java.util.ArrayList;
import java.util.List;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Patient;

/**
 * MRG-1 (HL7 v2.5.1 ch. 3.4.9) to the identifiers that are merged into those of the patient. The
 * HL7 v2-to-FHIR guide 1.0.0 maps MRG to Account only: this is our own row (docs/mappings).
 */
final class MrgToIdentifiers {

    private MrgToIdentifiers() {}

    /**
     * @param merges of the message; none is no merge
     * @throws ContentError for more than one merge, a merge that names no identifier, or one of the
     *     patient into itself
     */
    static List<Identifier> map(List<MRG> merges, Patient patient, Reading in) {
        if (merges.size() > 1) {
            throw refused("MRG[2]", "One merge a message is taken; nothing was merged.");
        }
        List<Identifier> subsumed = new ArrayList<>();
        for (MRG mrg : merges) {
            for (CX cx : mrg.getMrg1_PriorPatientIdentifierList()) {
                PatientIdentifiers.of(cx, "MRG-1", true, in).ifPresent(subsumed::add);
            }
            refuseUnusable(subsumed, patient);
        }
        return List.copyOf(subsumed);
    }

    private static void refuseUnusable(List<Identifier> subsumed, Patient patient) {
        if (subsumed.isEmpty()) {
            throw refused("MRG-1", "A prior identifier with its assigning authority is required.");
        }
        if (subsumed.stream().anyMatch(prior -> isOf(patient, prior))) {
            throw refused("MRG-1", "A patient cannot be merged into itself.");
        }
    }

    private static boolean isOf(Patient patient, Identifier prior) {
        return patient.getIdentifier().stream()
                .anyMatch(
                        own ->
                                prior.getValue().equals(own.getValue())
                                        && prior.getSystem().equals(own.getSystem()));
    }

    private static ContentError refused(String location, String text) {
        return new ContentError(Problem.error(Problem.Kind.VALUE, location, text));
    }
}
