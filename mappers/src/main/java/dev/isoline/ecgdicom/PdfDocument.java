package dev.isoline.ecgdicom;

import dev.isoline.dicom.BulkValue;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;

/**
 * A report as a PDF file.
 *
 * @param contentId stands for the content, such as the SHA-256 of the file: the SOP Instance UID is
 *     derived from it
 * @param title what a reader sees in a list; empty: what was ordered
 * @param recorded start of the recording it reports on, where that is known
 * @param created when it was made, where that is known
 * @param pdf the file, from {@code %PDF-} on
 * @param sources the objects it was made from, none where it came from elsewhere
 */
public record PdfDocument(
        String contentId,
        String title,
        Optional<OffsetDateTime> recorded,
        Optional<OffsetDateTime> created,
        BulkValue pdf,
        List<WrittenObject> sources) {

    /** First bytes of every PDF file, ISO 32000-1 7.5.2. */
    public static final String MAGIC = "%PDF-";
}
