package dev.isoline.hl7v2fhir;

import ca.uhn.hl7v2.model.Message;
import ca.uhn.hl7v2.model.v251.segment.PID;
import dev.isoline.hl7v2fhir.SegmentGroups.Insurance;
import dev.isoline.hl7v2fhir.datatype.IdentifierSystems;
import dev.isoline.hl7v2fhir.datatype.Reading;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.hl7.fhir.r4.model.Coverage;
import org.hl7.fhir.r4.model.DomainResource;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Reference;

/**
 * ORM^O01, OMG^O19 and ADT messages (HL7 v2.5.1 ch. 3.3, 4.4) to FHIR R4, by the rows of the HL7
 * v2-to-FHIR guide (docs/mappings).
 */
public final class MessageToFhir {

    private final MappingContext context;
    private final SegmentGroups segments;
    private final List<Note> notes = new ArrayList<>();
    private final Reading in;

    private MessageToFhir(Message message, MappingContext context) {
        this.context = context;
        this.segments = SegmentGroups.of(message);
        this.in =
                new Reading(
                        new IdentifierSystems(
                                context.sender(),
                                context.defaultAuthority(),
                                context.authorities()),
                        context.zone(),
                        (field, text) -> notes.add(new Note(field, text)));
    }

    /**
     * Maps one message, read into HAPI's v2.5.1 model whatever its MSH-12.
     *
     * @throws ContentError when the message names no patient, or an order lacks its number, its
     *     OBR, what is ordered or the patient's name; everything else becomes a note
     */
    public static MappedMessage map(Message message, MappingContext context) {
        boolean order = !message.getName().startsWith("ADT");
        return new MessageToFhir(message, context).map(order);
    }

    private MappedMessage map(boolean order) {
        if (segments.pid == null) {
            throw new ContentError(
                    Problem.error(
                            Problem.Kind.SEQUENCE, "PID", "The message needs a PID segment."));
        }
        PatientRecord patient = patient(segments.pid);
        List<ClinicalOrder> orders = order ? orders(patient) : List.of();
        List<Identifier> subsumed = MrgToIdentifiers.map(segments.merges, patient.patient(), in);
        segments.ignored.forEach(name -> notes.add(new Note(name, "the segment is not carried")));
        return new MappedMessage(patient, orders, subsumed, List.copyOf(notes));
    }

    private PatientRecord patient(PID pid) {
        Patient patient = PidToPatient.map(pid, in);
        Reference reference = new Reference("Patient/" + patient.getIdElement().getIdPart());
        List<Coverage> coverages = new ArrayList<>();
        List<DomainResource> related = new ArrayList<>();
        for (Insurance insurance : segments.insurances) {
            In1ToCoverage.Result result =
                    In1ToCoverage.map(
                            insurance.in1,
                            insurance.in2,
                            coverages.size() + 1,
                            reference,
                            context.received(),
                            in);
            coverages.add(result.coverage());
            addOnce(related, result.related());
        }
        for (int i = 0; i < segments.guarantors.size(); i++) {
            related.add(Gt1ToRelatedPerson.map(segments.guarantors.get(i), i, reference, in));
        }
        for (int i = 0; i < segments.nextOfKin.size(); i++) {
            related.add(Nk1ToRelatedPerson.map(segments.nextOfKin.get(i), i, reference, in));
        }
        return new PatientRecord(patient, coverages, related, ClearedFields.of(pid));
    }

    private static void addOnce(List<DomainResource> all, List<DomainResource> more) {
        for (DomainResource resource : more) {
            if (all.stream().noneMatch(r -> r.getId().equals(resource.getId()))) {
                all.add(resource);
            }
        }
    }

    private List<ClinicalOrder> orders(PatientRecord patient) {
        if (!patient.patient().hasName()) {
            throw new ContentError(
                    Problem.error(
                            Problem.Kind.REQUIRED, "PID-5", "The patient's name is required."));
        }
        if (segments.orders.isEmpty()) {
            throw new ContentError(
                    Problem.error(Problem.Kind.SEQUENCE, "ORC", "The message holds no order."));
        }
        Set<String> ids = new HashSet<>();
        List<ClinicalOrder> orders = new ArrayList<>();
        for (SegmentGroups.OrderGroup group : segments.orders) {
            ClinicalOrder order = new OrderMapping(segments, patient, in).map(group);
            if (!ids.add(order.serviceRequest().getId())) {
                throw new ContentError(
                        Problem.error(
                                Problem.Kind.DUPLICATE_KEY,
                                "ORC-2",
                                "Two orders of the message have the same placer order number."));
            }
            orders.add(order);
        }
        return orders;
    }
}
