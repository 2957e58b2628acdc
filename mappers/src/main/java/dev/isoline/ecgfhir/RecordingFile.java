package dev.isoline.ecgfhir;

import java.time.Instant;

/**
 * The file a report was computed from.
 *
 * @param sha256 of its bytes, hexadecimal
 * @param sha1 of its bytes, hexadecimal; FHIR R4 wants this one in Attachment.hash
 * @param size bytes
 * @param contentType MIME type, such as {@code application/zip}
 * @param format name of the recording format, such as {@code EDF+C}
 * @param equipment the recorder as the file names it; empty when it does not
 * @param received when it came in
 */
public record RecordingFile(
        String sha256,
        String sha1,
        long size,
        String contentType,
        String format,
        String equipment,
        Instant received) {}
