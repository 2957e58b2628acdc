package dev.isoline.ecgdicom.module;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;
import dev.isoline.ecgdicom.OrderContext.Code;
import dev.isoline.ecgdicom.WrittenObject;
import java.util.List;

/** Encapsulated Document Module, PS3.3 C.24.2. */
public final class EncapsulatedDocumentModule {

    private static final int LONGEST_ST = 1024;

    /** CID 7000 Diagnostic Imaging Report Document Title, PS3.16. */
    private static final Code HOLTER_REPORT = new Code("18754-2", "LN", "Holter Study Report");

    private EncapsulatedDocumentModule() {}

    public static DataSet of(DocumentObject object) {
        var document = object.document();
        List<DataSet> sources =
                document.sources().stream().map(EncapsulatedDocumentModule::reference).toList();
        return new ModuleWriter("Encapsulated Document (PS3.3 C.24.2)")
                .type1(Tag.InstanceNumber, object.number())
                .type2(Tag.ContentDate, DicomTime.date(document.created()))
                .type2(Tag.ContentTime, DicomTime.time(document.created()))
                .type2(Tag.AcquisitionDateTime, DicomTime.dateTime(document.recorded()))
                // the page shows whom it is about
                .type1(Tag.BurnedInAnnotation, "YES")
                .type1C(!sources.isEmpty(), Tag.SourceInstanceSequence, sources)
                .type2(Tag.DocumentTitle, title(object))
                .type2(Tag.ConceptNameCodeSequence, CodeItems.code(HOLTER_REPORT))
                .type3(Tag.VerificationFlag, "UNVERIFIED")
                .type1(Tag.MIMETypeOfEncapsulatedDocument, "application/pdf")
                .type1(Tag.EncapsulatedDocument, document.pdf())
                .type3(Tag.EncapsulatedDocumentLength, document.pdf().length())
                .dataSet();
    }

    private static String title(DocumentObject object) {
        String given = object.document().title();
        return Labels.cut(
                given.isEmpty() ? object.order().procedure().meaning() : given, LONGEST_ST);
    }

    /** SOP Instance Reference macro, PS3.3 table 10-11. */
    private static DataSet reference(WrittenObject source) {
        return new ModuleWriter("SOP Instance Reference (PS3.3 10.8)")
                .type1(Tag.ReferencedSOPClassUID, source.sopClassUid())
                .type1(Tag.ReferencedSOPInstanceUID, source.sopInstanceUid())
                .dataSet();
    }
}
