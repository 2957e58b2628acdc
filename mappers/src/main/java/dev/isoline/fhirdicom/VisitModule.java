package dev.isoline.fhirdicom;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;
import dev.isoline.ecgdicom.module.CodeItems;
import dev.isoline.ecgdicom.module.ModuleWriter;
import org.hl7.fhir.r4.model.Location;

/** Visit Identification and Visit Status, PS3.3 C.3.2 and C.3.3. */
final class VisitModule {

    private VisitModule() {}

    static DataSet of(OrderedProcedure ordered) {
        var visit = ordered.context().admission();
        return new ModuleWriter("Visit (PS3.3 C.3)")
                .type2(Tag.AdmissionID, visit.value())
                .type3(Tag.IssuerOfAdmissionIDSequence, CodeItems.authority(visit.authority()))
                .type2(Tag.CurrentPatientLocation, location(ordered))
                .dataSet();
    }

    private static String location(OrderedProcedure ordered) {
        return ordered.encounter().stream()
                .flatMap(e -> e.getLocation().stream())
                .flatMap(l -> ordered.find(l.getLocation(), Location.class).stream())
                .filter(Location::hasName)
                .map(l -> DescriptiveText.cut(l.getName(), DescriptiveText.LO))
                .findFirst()
                .orElse("");
    }
}
