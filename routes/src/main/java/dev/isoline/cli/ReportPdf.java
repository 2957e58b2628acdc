package dev.isoline.cli;

import dev.isoline.dicom.FileBulk;
import dev.isoline.ecgdicom.OrderContext;
import dev.isoline.ecgdicom.PdfDocument;
import dev.isoline.ecgdicom.WrittenDocument;
import dev.isoline.ecgdicom.iod.EncapsulatedPdfIod;
import dev.isoline.recordings.ContentDigest;
import dev.isoline.recordings.ObjectFolder;
import dev.isoline.recordings.RecordingPlace;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** A report in PDF, told by its first bytes, as an Encapsulated PDF object. */
final class ReportPdf {

    private static final byte[] MAGIC = PdfDocument.MAGIC.getBytes(StandardCharsets.US_ASCII);

    private ReportPdf() {}

    static boolean is(Path file) throws IOException {
        if (!Files.isRegularFile(file)) {
            return false;
        }
        try (InputStream in = Files.newInputStream(file)) {
            return Arrays.equals(in.readNBytes(MAGIC.length), MAGIC);
        }
    }

    static WrittenDocument write(ConvertArguments arguments, ObjectFolder folder)
            throws IOException {
        OrderContext order = OrderFile.read(arguments.order());
        String digest = ContentDigest.of(RecordingPlace.files(arguments.recording()));
        try (var pdf = FileChannel.open(arguments.recording())) {
            var recorded =
                    arguments.start().map(s -> s.atZone(arguments.zone()).toOffsetDateTime());
            var document =
                    new PdfDocument(
                            digest,
                            "",
                            recorded,
                            Optional.empty(),
                            new FileBulk(pdf, 0, pdf.size()),
                            List.of());
            return EncapsulatedPdfIod.write(document, order, folder);
        }
    }
}
