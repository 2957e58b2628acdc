package dev.isoline.ecgdicom.module;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;

/** Patient Study Module, PS3.3 C.7.2.2: the visit, when the order names it. */
public final class PatientStudyModule {

    private PatientStudyModule() {}

    public static DataSet of(CompositeObject object) {
        var admission = object.order().admission();
        return new ModuleWriter("Patient Study (PS3.3 C.7.2.2)")
                .type3(Tag.AdmissionID, admission.value())
                .type3(Tag.IssuerOfAdmissionIDSequence, CodeItems.issuer(admission))
                .dataSet();
    }
}
