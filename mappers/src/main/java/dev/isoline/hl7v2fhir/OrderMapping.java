package dev.isoline.hl7v2fhir;

import ca.uhn.hl7v2.model.v251.segment.DG1;
import ca.uhn.hl7v2.model.v251.segment.NTE;
import dev.isoline.hl7v2fhir.SegmentGroups.ObservationGroup;
import dev.isoline.hl7v2fhir.SegmentGroups.OrderGroup;
import dev.isoline.hl7v2fhir.datatype.CeToCodeableConcept;
import dev.isoline.hl7v2fhir.datatype.Reading;
import dev.isoline.hl7v2fhir.datatype.StToString;
import dev.isoline.hl7v2fhir.datatype.XadToAddress;
import dev.isoline.hl7v2fhir.table.Table0203;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import dev.isoline.order.StableId;
import java.util.ArrayList;
import java.util.List;
import org.hl7.fhir.r4.model.Coverage;
import org.hl7.fhir.r4.model.DomainResource;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Practitioner;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest;

/**
 * One order group of ORM_O01 or OMG_O19 (HL7 v2.5.1 ch. 4.4) to a ServiceRequest and what it refers
 * to.
 */
final class OrderMapping {

    private final SegmentGroups message;
    private final PatientRecord patient;
    private final Reading in;
    private final Reference subject;
    private final Practitioners practitioners;
    private final ServiceRequest request = new ServiceRequest();
    private final List<DomainResource> related = new ArrayList<>();

    OrderMapping(SegmentGroups message, PatientRecord patient, Reading in) {
        this.message = message;
        this.patient = patient;
        this.in = in;
        this.subject = new Reference("Patient/" + patient.patient().getIdElement().getIdPart());
        this.practitioners = new Practitioners(in);
    }

    /** Refuses an order that lacks its OBR, its number or what is ordered. */
    ClinicalOrder map(OrderGroup group) {
        segments(group);
        String id = StableId.of("ServiceRequest", placer().getSystem(), placer().getValue());
        request.setSubject(subject).setId(id);
        for (Coverage coverage : patient.coverages()) {
            request.addInsurance(new Reference("Coverage/" + coverage.getIdElement().getIdPart()));
        }
        encounter(id);
        diagnoses(group, id);
        observations(group, id);
        facility(group);
        OrcToServiceRequest.reason(group.orc, request);
        practitioners.all().forEach(related::add);
        return new ClinicalOrder(
                StToString.map(group.orc.getOrc1_OrderControl()), request, patient, related);
    }

    private void segments(OrderGroup group) {
        require(group.orc != null, Problem.Kind.SEQUENCE, "ORC", "An OBR needs its ORC before it.");
        require(
                StToString.map(group.orc.getOrc1_OrderControl()) != null,
                Problem.Kind.REQUIRED,
                "ORC-1",
                "The order control code is required.");
        require(
                group.obr != null,
                Problem.Kind.SEQUENCE,
                "OBR",
                "An order needs an OBR that says what is ordered.");
        require(
                CeToCodeableConcept.map(group.obr.getObr4_UniversalServiceIdentifier()).isPresent(),
                Problem.Kind.REQUIRED,
                "OBR-4",
                "What is ordered is required.");
        group.timings.forEach(tq1 -> Tq1ToServiceRequest.map(tq1, request, in));
        OrcToServiceRequest.map(group.orc, request, practitioners, in);
        ObrToServiceRequest.map(group.obr, request, practitioners, in);
        for (NTE nte : group.notes) {
            NteToAnnotation.map(nte).ifPresent(request::addNote);
        }
    }

    private static void require(boolean holds, Problem.Kind kind, String location, String text) {
        if (!holds) {
            throw new ContentError(Problem.error(kind, location, text));
        }
    }

    private Identifier placer() {
        return request.getIdentifier().stream()
                .filter(i -> i.getType().hasCoding(Table0203.SYSTEM, "PLAC"))
                .findFirst()
                .orElseThrow(
                        () ->
                                new ContentError(
                                        Problem.error(
                                                Problem.Kind.REQUIRED,
                                                "ORC-2",
                                                "The placer order number is required in ORC-2 or OBR-2.")));
    }

    private void encounter(String id) {
        if (message.pv1 != null) {
            String encounter = StableId.of("Encounter", id);
            related.addAll(Pv1ToEncounter.map(message.pv1, encounter, subject, practitioners, in));
            request.setEncounter(new Reference("Encounter/" + encounter));
        }
    }

    /** DG1 before the first ORC belong to every order. */
    private void diagnoses(OrderGroup group, String id) {
        var all = new ArrayList<DG1>(message.diagnoses);
        all.addAll(group.diagnoses);
        for (int i = 0; i < all.size(); i++) {
            String condition = StableId.of("Condition", id, "" + i);
            Dg1ToCondition.map(all.get(i), condition, subject, practitioners, in)
                    .ifPresent(
                            c -> {
                                related.add(c);
                                request.addReasonReference(new Reference("Condition/" + condition));
                            });
        }
    }

    private void observations(OrderGroup group, String id) {
        var all = new ArrayList<ObservationGroup>(message.observations);
        all.addAll(group.observations);
        for (int i = 0; i < all.size(); i++) {
            ObservationGroup at = all.get(i);
            String observation = StableId.of("Observation", id, "" + i);
            ObxToObservation.map(at.obx(), observation, subject, practitioners, in)
                    .ifPresent(
                            o -> {
                                at.notes()
                                        .forEach(n -> NteToAnnotation.map(n).ifPresent(o::addNote));
                                related.add(o);
                                request.addSupportingInfo(
                                        new Reference("Observation/" + observation));
                            });
        }
    }

    private void facility(OrderGroup group) {
        if (!request.hasRequester()) {
            return;
        }
        related.addAll(OrcToPractitionerRole.map(group.orc, request.getRequester().copy(), in));
        for (Practitioner practitioner : practitioners.all()) {
            if (request.getRequester()
                    .getReference()
                    .endsWith(practitioner.getIdElement().getIdPart())) {
                Fields.each(
                        group.orc.getOrc24_OrderingProviderAddress(),
                        f -> XadToAddress.map(f, in.at("ORC-24")),
                        practitioner::addAddress);
            }
        }
    }
}
