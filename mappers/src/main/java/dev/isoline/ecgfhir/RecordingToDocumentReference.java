package dev.isoline.ecgfhir;

import dev.isoline.fhir.UtcTime;
import java.util.HexFormat;
import java.util.Optional;
import org.hl7.fhir.r4.model.Attachment;
import org.hl7.fhir.r4.model.DocumentReference;
import org.hl7.fhir.r4.model.Enumerations.DocumentReferenceStatus;
import org.hl7.fhir.r4.model.Period;
import org.hl7.fhir.r4.model.Reference;

/** The recording file: what it is and how to know it again, not its bytes. */
final class RecordingToDocumentReference {

    private RecordingToDocumentReference() {}

    static DocumentReference map(ReportContext context, Optional<Period> recorded) {
        var ids = new ReportIds(context);
        var document = new DocumentReference();
        document.setId(ids.document());
        document.addIdentifier(ReportIds.identifier(document.getId()));
        document.setStatus(DocumentReferenceStatus.CURRENT);
        document.setType(AmbulatoryEcgMetric.RECORDING.concept());
        document.setSubject(ids.subject());
        document.setDateElement(UtcTime.instant(context.recording().received()));
        if (!context.recording().equipment().isEmpty()) {
            document.addAuthor(new Reference("Device/" + ids.recorder()));
        }
        document.addContent().setAttachment(attachment(context.recording()));
        document.getContext().addRelated(ids.order());
        recorded.ifPresent(document.getContext()::setPeriod);
        return document;
    }

    /** FHIR R4 Attachment: hash is the SHA-1 of the bytes, size counts them before any base64. */
    private static Attachment attachment(RecordingFile file) {
        return new Attachment()
                .setContentType(file.contentType())
                .setTitle("Recording, " + file.format())
                .setSize(Math.toIntExact(Math.min(file.size(), Integer.MAX_VALUE)))
                .setHash(HexFormat.of().parseHex(file.sha1()));
    }
}
