package dev.isoline.conformance.validator;

import ca.uhn.hl7v2.HL7Exception;
import ca.uhn.hl7v2.model.Group;
import ca.uhn.hl7v2.model.Segment;
import ca.uhn.hl7v2.model.Structure;
import ca.uhn.hl7v2.model.Type;
import java.util.ArrayList;
import java.util.List;

/**
 * Segments and fields that the HL7 data base marks as required (HAPI's structure classes are
 * generated from it) and a message leaves out. A required part of an optional group counts only
 * where the group is there; of segments to choose from, such as OBR and RXO in ORM^O01, none is
 * required by itself.
 */
final class RequiredParts {

    private final List<Finding> findings = new ArrayList<>();

    private RequiredParts() {}

    static List<Finding> missing(Group message) throws HL7Exception {
        var parts = new RequiredParts();
        parts.visit(message);
        return parts.findings;
    }

    private void visit(Group group) throws HL7Exception {
        for (String name : group.getNames()) {
            visitAll(group, name);
        }
    }

    private void visitAll(Group group, String name) throws HL7Exception {
        boolean present = false;
        for (Structure part : group.getAll(name)) {
            if (!part.isEmpty()) {
                present = true;
                visit(part);
            }
        }
        if (!present && group.isRequired(name) && !group.isChoiceElement(name)) {
            findings.add(Finding.error(name, "required in " + group.getName() + " but missing"));
        }
    }

    private void visit(Structure part) throws HL7Exception {
        if (part instanceof Group group) {
            visit(group);
        } else if (part instanceof Segment segment) {
            visit(segment);
        }
    }

    private void visit(Segment segment) throws HL7Exception {
        for (int field = 1; field <= segment.numFields(); field++) {
            if (segment.isRequired(field) && isEmpty(segment, field)) {
                findings.add(
                        Finding.error(segment.getName() + "-" + field, "required field is empty"));
            }
        }
    }

    private static boolean isEmpty(Segment segment, int field) throws HL7Exception {
        for (Type repetition : segment.getField(field)) {
            if (!repetition.isEmpty()) {
                return false;
            }
        }
        return true;
    }
}
