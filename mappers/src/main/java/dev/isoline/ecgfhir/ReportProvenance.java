package dev.isoline.ecgfhir;

import dev.isoline.fhir.UtcTime;
import java.util.List;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Provenance;
import org.hl7.fhir.r4.model.Provenance.ProvenanceEntityRole;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;

/** Who made the report from what (FHIR R4 provenance.html). */
final class ReportProvenance {

    private ReportProvenance() {}

    static Provenance of(ReportContext context, List<Resource> made) {
        var ids = new ReportIds(context);
        var provenance = new Provenance();
        provenance.setId(ids.of("Provenance", ""));
        made.forEach(resource -> provenance.addTarget(ReportIds.to(resource)));
        provenance.setRecordedElement(UtcTime.instant(context.issued()));
        provenance
                .addAgent()
                .setType(assembler())
                .setWho(new Reference("Device/" + ids.software()));
        provenance
                .addEntity()
                .setRole(ProvenanceEntityRole.SOURCE)
                .setWhat(new Reference("DocumentReference/" + ids.document()));
        return provenance;
    }

    private static CodeableConcept assembler() {
        return new CodeableConcept(
                new Coding(
                        "http://terminology.hl7.org/CodeSystem/provenance-participant-type",
                        "assembler",
                        "Assembler"));
    }
}
