package dev.isoline.conformance.validator;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** What a file is, by its content; names are not trusted. */
enum ContentKind {
    /** {@code DICM} after the 128-byte preamble (PS3.10 7.1). */
    DICOM,
    /** First segment MSH, perhaps behind an MLLP start byte (HL7 v2.5.1 ch. 2.5). */
    HL7V2,
    /** A JSON object. */
    FHIR,
    UNKNOWN;

    private static final int PREAMBLE = 128;

    static ContentKind of(byte[] bytes) {
        if (bytes.length > PREAMBLE + 4
                && text(Arrays.copyOfRange(bytes, PREAMBLE, PREAMBLE + 4)).equals("DICM")) {
            return DICOM;
        }
        String start = text(Arrays.copyOf(bytes, Math.min(64, bytes.length))).stripLeading();
        if (start.startsWith("MSH") || start.startsWith("\u000bMSH")) {
            return HL7V2;
        }
        return start.startsWith("{") ? FHIR : UNKNOWN;
    }

    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.ISO_8859_1);
    }
}
