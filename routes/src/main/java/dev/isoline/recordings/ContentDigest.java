package dev.isoline.recordings;

import dev.isoline.ecg.RecordingFiles;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 of a recording: of its one file, or of the names and bytes of all its files. */
public final class ContentDigest {

    private ContentDigest() {}

    public static String of(RecordingFiles files) throws IOException {
        MessageDigest digest = sha256();
        var buffer = ByteBuffer.allocate(256 * 1024);
        for (String name : files.names()) {
            if (files.names().size() > 1) {
                digest.update((name + '\0').getBytes(StandardCharsets.UTF_8));
            }
            try (var channel = files.open(name)) {
                while (channel.read(buffer) >= 0) {
                    digest.update(buffer.flip());
                    buffer.clear();
                }
            }
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
