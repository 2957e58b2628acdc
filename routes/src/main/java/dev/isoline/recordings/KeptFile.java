package dev.isoline.recordings;

import dev.isoline.ecg.RecordingHeader;
import dev.isoline.ecgfhir.RecordingFile;
import dev.isoline.ledger.RecordingTable.RecordingRow;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.util.HexFormat;

/** A kept recording as its report describes it. */
final class KeptFile {

    private static final byte[] ZIP = {'P', 'K', 3, 4};

    private KeptFile() {}

    /** Reads the file once for the SHA-1 that FHIR's Attachment.hash wants. */
    static RecordingFile describe(Path file, RecordingRow row, RecordingHeader header)
            throws IOException {
        var sha1 = RecordingStore.digest("SHA-1");
        try (InputStream bytes = new DigestInputStream(Files.newInputStream(file), sha1)) {
            byte[] start = bytes.readNBytes(ZIP.length);
            bytes.transferTo(OutputStream.nullOutputStream());
            return new RecordingFile(
                    row.sha256(),
                    HexFormat.of().formatHex(sha1.digest()),
                    Files.size(file),
                    java.util.Arrays.equals(start, ZIP)
                            ? "application/zip"
                            : "application/octet-stream",
                    header.format(),
                    header.equipment(),
                    row.receivedAt());
        }
    }
}
