package dev.isoline.hl7v2fhir;

import ca.uhn.hl7v2.HL7Exception;
import ca.uhn.hl7v2.model.Group;
import ca.uhn.hl7v2.model.Message;
import ca.uhn.hl7v2.model.Segment;
import ca.uhn.hl7v2.model.Structure;
import ca.uhn.hl7v2.model.v251.segment.DG1;
import ca.uhn.hl7v2.model.v251.segment.GT1;
import ca.uhn.hl7v2.model.v251.segment.IN1;
import ca.uhn.hl7v2.model.v251.segment.IN2;
import ca.uhn.hl7v2.model.v251.segment.MRG;
import ca.uhn.hl7v2.model.v251.segment.NK1;
import ca.uhn.hl7v2.model.v251.segment.NTE;
import ca.uhn.hl7v2.model.v251.segment.OBR;
import ca.uhn.hl7v2.model.v251.segment.OBX;
import ca.uhn.hl7v2.model.v251.segment.ORC;
import ca.uhn.hl7v2.model.v251.segment.PID;
import ca.uhn.hl7v2.model.v251.segment.PV1;
import ca.uhn.hl7v2.model.v251.segment.TQ1;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * The segments of a message as they belong together, in the order of its text. The message
 * structures of HL7 v2.5.1 ch. 3.3 and 4.4 say where each may stand; real senders misplace IN1,
 * GT1, DG1, NTE and TQ1, so only ORC, OBR and OBX open a place here, and insurance belongs to the
 * patient anywhere.
 */
final class SegmentGroups {

    /** Segments of the structures that carry nothing the mapping takes. */
    private static final Set<String> NOT_MAPPED = Set.of("MSH", "SFT", "EVN", "UAC");

    /** IN1 with the IN2 that follows it. */
    static final class Insurance {
        final IN1 in1;
        IN2 in2;

        Insurance(IN1 in1) {
            this.in1 = in1;
        }
    }

    /** OBX with the NTE that follow it. */
    record ObservationGroup(OBX obx, List<NTE> notes) {}

    /** ORC, its OBR and what follows them. */
    static final class OrderGroup {
        ORC orc;
        OBR obr;
        final List<TQ1> timings = new ArrayList<>();
        final List<DG1> diagnoses = new ArrayList<>();
        final List<NTE> notes = new ArrayList<>();
        final List<ObservationGroup> observations = new ArrayList<>();
    }

    PID pid;
    PV1 pv1;
    final List<MRG> merges = new ArrayList<>();
    final List<Insurance> insurances = new ArrayList<>();
    final List<GT1> guarantors = new ArrayList<>();
    final List<NK1> nextOfKin = new ArrayList<>();
    final List<DG1> diagnoses = new ArrayList<>();
    final List<ObservationGroup> observations = new ArrayList<>();
    final List<OrderGroup> orders = new ArrayList<>();

    /** Names of segments met that the mapping has no place for; Z segments are not among them. */
    final List<String> ignored = new ArrayList<>();

    private final boolean isMerge;
    private OrderGroup order;
    private ObservationGroup observation;

    private SegmentGroups(boolean isMerge) {
        this.isMerge = isMerge;
    }

    static SegmentGroups of(Message message) {
        var groups = new SegmentGroups(message.getName().equals("ADT_A39"));
        try {
            groups.walk(message);
        } catch (HL7Exception e) {
            throw new IllegalStateException(
                    "a parsed message lists structures it does not have", e);
        }
        return groups;
    }

    private void walk(Group group) throws HL7Exception {
        for (String name : group.getNames()) {
            for (Structure structure : group.getAll(name)) {
                if (structure instanceof Group inner) {
                    walk(inner);
                } else if (structure instanceof Segment segment && !segment.isEmpty()) {
                    place(segment);
                }
            }
        }
    }

    private void place(Segment segment) {
        if (!patient(segment) && !placeInOrder(segment) && isForeign(segment.getName())) {
            ignored.add(segment.getName());
        }
    }

    private static boolean isForeign(String name) {
        return !name.startsWith("Z") && !NOT_MAPPED.contains(name);
    }

    private boolean patient(Segment segment) {
        if (segment instanceof PID first && pid == null) {
            pid = first;
        } else if (isMerge && segment instanceof MRG mrg) {
            merges.add(mrg);
        } else if (segment instanceof PV1 visit && pv1 == null) {
            pv1 = visit;
        } else if (segment instanceof IN1 in1) {
            insurances.add(new Insurance(in1));
        } else if (segment instanceof IN2 in2 && !insurances.isEmpty()) {
            insurances.get(insurances.size() - 1).in2 = in2;
        } else if (segment instanceof GT1 gt1) {
            guarantors.add(gt1);
        } else if (segment instanceof NK1 nk1) {
            nextOfKin.add(nk1);
        } else {
            return false;
        }
        return true;
    }

    private boolean placeInOrder(Segment segment) {
        if (segment instanceof ORC orc) {
            open(orc);
        } else if (segment instanceof OBR obr) {
            open(obr);
        } else if (segment instanceof DG1 dg1) {
            (order == null ? diagnoses : order.diagnoses).add(dg1);
        } else if (segment instanceof OBX obx) {
            observation = new ObservationGroup(obx, new ArrayList<>());
            (order == null ? observations : order.observations).add(observation);
        } else if (segment instanceof NTE nte && order != null) {
            (observation == null ? order.notes : observation.notes()).add(nte);
        } else if (segment instanceof TQ1 tq1 && order != null) {
            order.timings.add(tq1);
        } else {
            return false;
        }
        return true;
    }

    private void open(ORC orc) {
        order = new OrderGroup();
        order.orc = orc;
        observation = null;
        orders.add(order);
    }

    /** A second OBR under one ORC is an order of its own, with that ORC. */
    private void open(OBR obr) {
        if (order == null || order.obr != null) {
            ORC orc = order == null ? null : order.orc;
            order = new OrderGroup();
            order.orc = orc;
            orders.add(order);
        }
        observation = null;
        order.obr = obr;
    }
}
