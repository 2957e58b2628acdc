package dev.isoline.ecgfhir;

import dev.isoline.fhir.Systems;
import dev.isoline.order.StableId;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;

/** Ids of what one recording of one order gives; the same recording gives the same. */
final class ReportIds {

    private final ReportContext context;

    ReportIds(ReportContext context) {
        this.context = context;
    }

    /** Of a resource that there is one of per order, recording and role. */
    String of(String type, String role) {
        return StableId.of(type, context.orderId(), context.recording().sha256(), role);
    }

    String report() {
        return of("DiagnosticReport", "");
    }

    String document() {
        return of("DocumentReference", "");
    }

    /** The program; one Device per version of it. */
    String software() {
        return StableId.of("Device", "ambulatory-ecg-analysis", context.software());
    }

    /** The recorder as the file names it; one Device per name. */
    String recorder() {
        return StableId.of("Device", "recorder", context.recording().equipment());
    }

    Reference subject() {
        return new Reference("Patient/" + context.patient().getIdElement().getIdPart());
    }

    Reference order() {
        return new Reference("ServiceRequest/" + context.orderId());
    }

    /** What a receiver recognises a resource of this id by. */
    static Identifier identifier(String id) {
        return new Identifier().setSystem(Systems.URI).setValue("urn:uuid:" + id);
    }

    static Reference to(Resource resource) {
        return new Reference(resource.fhirType() + "/" + resource.getIdElement().getIdPart());
    }
}
