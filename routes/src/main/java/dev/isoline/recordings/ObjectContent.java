package dev.isoline.recordings;

import dev.isoline.dicom.Part10;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.TransferSyntax;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.util.Arrays;

/**
 * What a DICOM object says, whatever transfer syntax and file meta information it came with: a
 * station that stores it again, or another one, may encode it anew.
 */
final class ObjectContent {

    private ObjectContent() {}

    static boolean isSame(Path one, Path other) throws IOException {
        return Arrays.equals(digest(one), digest(other));
    }

    private static byte[] digest(Path file) throws IOException {
        var sha256 = RecordingStore.digest("SHA-256");
        try (var channel = FileChannel.open(file);
                var out = new DigestOutputStream(OutputStream.nullOutputStream(), sha256)) {
            Part10.write(
                    Channels.newChannel(out),
                    TransferSyntax.IMPLICIT_VR_LITTLE_ENDIAN,
                    Part10.read(channel, ReadLimits.DEFAULT).dataSet());
        }
        return sha256.digest();
    }
}
