package dev.isoline.ecgdicom.iod;

import dev.isoline.dicom.Part10;
import dev.isoline.dicom.Tag;
import dev.isoline.dicom.TransferSyntax;
import dev.isoline.dicom.Uid;
import dev.isoline.ecgdicom.ObjectSink;
import dev.isoline.ecgdicom.OrderContext;
import dev.isoline.ecgdicom.PdfDocument;
import dev.isoline.ecgdicom.WrittenDocument;
import dev.isoline.ecgdicom.module.CompositeObject.Series;
import dev.isoline.ecgdicom.module.DocumentObject;
import dev.isoline.ecgdicom.module.EncapsulatedDocumentModule;
import dev.isoline.ecgdicom.module.EncapsulatedDocumentSeriesModule;
import dev.isoline.ecgdicom.module.GeneralEquipmentModule;
import dev.isoline.ecgdicom.module.GeneralStudyModule;
import dev.isoline.ecgdicom.module.PatientModule;
import dev.isoline.ecgdicom.module.PatientStudyModule;
import dev.isoline.ecgdicom.module.RequestedOrderModule;
import dev.isoline.ecgdicom.module.ScEquipmentModule;
import dev.isoline.ecgdicom.module.SopCommonModule;
import dev.isoline.order.ContentError;
import dev.isoline.order.Problem;
import java.io.IOException;
import java.util.List;

/** Encapsulated PDF IOD, PS3.3 A.45.1: a report in the study of its waveforms, streamed. */
public final class EncapsulatedPdfIod {

    public static final String SOP_CLASS_UID = "1.2.840.10008.5.1.4.1.1.104.1";

    // spotless:off
    /** PS3.3 table A.45.1-1. */
    private static final List<IodModule<DocumentObject>> MODULES = List.of(
            IodModule.mandatory (PatientModule::of),
            IodModule.notWritten("Clinical Trial Subject"),
            IodModule.mandatory (GeneralStudyModule::of),
            IodModule.userOption(PatientStudyModule::of),
            IodModule.notWritten("Clinical Trial Study"),
            IodModule.mandatory (EncapsulatedDocumentSeriesModule::of),
            IodModule.notWritten("Clinical Trial Series"),
            IodModule.mandatory (GeneralEquipmentModule::of),
            IodModule.mandatory (ScEquipmentModule::of),
            IodModule.mandatory (EncapsulatedDocumentModule::of),
            IodModule.mandatory (SopCommonModule::of),
            IodModule.extension (RequestedOrderModule::of));
    // spotless:on

    private EncapsulatedPdfIod() {}

    /**
     * Writes one object; the PDF goes through without being held in memory.
     *
     * @throws ContentError when it is no PDF file, or the order holds what no attribute may have
     */
    public static WrittenDocument write(PdfDocument document, OrderContext order, ObjectSink sink)
            throws IOException {
        if (document.pdf().length() < PdfDocument.MAGIC.length()) {
            throw new ContentError(
                    Problem.error(
                            Problem.Kind.VALUE,
                            Tag.format(Tag.EncapsulatedDocument),
                            "The document is no PDF file."));
        }
        var object = object(document, order);
        var dataSet = IodModule.write(MODULES, object);
        try (var target = sink.open(object.sopInstanceUid())) {
            Part10.write(target.channel(), TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN, dataSet);
            long bytes = target.channel().position();
            target.complete();
            return new WrittenDocument(
                    SOP_CLASS_UID,
                    object.sopInstanceUid(),
                    object.series().uid(),
                    order.studyUid(),
                    bytes);
        }
    }

    /** All reports of an order are in one series, told apart by their content. */
    private static DocumentObject object(PdfDocument document, OrderContext order) {
        var series =
                new Series(
                        Uid.of("documents", order.studyUid()), 4, "Reports", document.recorded());
        return new DocumentObject(
                order,
                SOP_CLASS_UID,
                Uid.of("instance", series.uid(), document.contentId()),
                series,
                1,
                document);
    }
}
