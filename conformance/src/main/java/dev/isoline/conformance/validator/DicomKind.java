package dev.isoline.conformance.validator;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Tells waveform objects by the SOP class in the file meta information (PS3.10 7.1). */
final class DicomKind {

    /** All waveform storage classes are under this root (PS3.6 Table A-1). */
    private static final String WAVEFORM_STORAGE = "1.2.840.10008.5.1.4.1.1.9.";

    private static final int META_REACH = 1024;

    private DicomKind() {}

    static boolean isWaveform(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            String start = new String(in.readNBytes(META_REACH), StandardCharsets.ISO_8859_1);
            return start.contains(WAVEFORM_STORAGE);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
