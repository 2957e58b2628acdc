package dev.isoline.ecgdicom.module;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;

/** General Study Module, PS3.3 C.7.2.1; the study begins with the recording. */
public final class GeneralStudyModule {

    private GeneralStudyModule() {}

    public static DataSet of(CompositeObject object) {
        var order = object.order();
        return new ModuleWriter("General Study (PS3.3 C.7.2.1)")
                .type1(Tag.StudyInstanceUID, order.studyUid())
                .type2(Tag.StudyDate, DicomTime.date(object.series().start()))
                .type2(Tag.StudyTime, DicomTime.time(object.series().start()))
                .type2(Tag.ReferringPhysicianName, order.referringPhysician())
                .type2(Tag.StudyID, order.requestedProcedureId())
                .type2(Tag.AccessionNumber, order.accession().value())
                .type3(Tag.IssuerOfAccessionNumberSequence, CodeItems.issuer(order.accession()))
                .type3(Tag.StudyDescription, order.procedure().meaning())
                .type3(Tag.ProcedureCodeSequence, CodeItems.code(order.procedure()))
                .dataSet();
    }
}
