package dev.isoline.recordings;

import dev.isoline.ecg.Damage;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.format.RecordingFormats;
import dev.isoline.settings.IsolineProperties;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.UUID;
import org.springframework.stereotype.Component;

/**
 * Files as they were received, named by their checksum: no patient detail in a name, no file twice.
 */
@Component
public class RecordingStore {

    /**
     * @param path relative to the data folder
     */
    public record Kept(String sha256, long size, String path) {}

    /** A file whose bytes are on disk but that has no place yet. */
    record Incoming(Path file, String sha256) {}

    private final Path data;
    private final Damage damage;

    public RecordingStore(IsolineProperties properties) {
        this.data = properties.data();
        this.damage = properties.recordings().salvage() ? Damage.SALVAGE : Damage.REFUSE;
    }

    /** Streams the bytes to disk and syncs them, under a name for the time being. */
    Incoming stream(InputStream bytes) throws IOException {
        Path incoming = Files.createDirectories(data.resolve("recordings/incoming"));
        Path part = incoming.resolve(UUID.randomUUID() + ".part");
        try {
            return new Incoming(part, write(bytes, part));
        } catch (IOException | RuntimeException e) {
            Files.deleteIfExists(part);
            throw e;
        }
    }

    /** Gives a file its name for good; it is on disk under it when this returns. */
    Kept place(Incoming incoming) throws IOException {
        String sha256 = incoming.sha256();
        String path = "recordings/" + sha256.substring(0, 2) + "/" + sha256;
        Path target = data.resolve(path);
        Files.createDirectories(target.getParent());
        Files.move(incoming.file(), target, StandardCopyOption.ATOMIC_MOVE);
        sync(target.getParent());
        sync(target.getParent().getParent());
        return new Kept(sha256, Files.size(target), path);
    }

    private static void sync(Path folder) throws IOException {
        try (var channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        }
    }

    /** The recording that is kept at the path; the caller closes it. */
    Recording open(String path) throws IOException {
        return RecordingFormats.open(RecordingPlace.files(resolve(path)), damage);
    }

    public Path resolve(String path) {
        return data.resolve(path);
    }

    /** Removes a file that turned out not to be a recording. */
    public void discard(Kept kept) throws IOException {
        Files.deleteIfExists(data.resolve(kept.path()));
    }

    private static String write(InputStream bytes, Path part) throws IOException {
        var sha256 = digest("SHA-256");
        try (var file =
                        FileChannel.open(
                                part, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
                OutputStream out = new DigestOutputStream(Channels.newOutputStream(file), sha256)) {
            bytes.transferTo(out);
            out.flush();
            file.force(true);
        }
        return HexFormat.of().formatHex(sha256.digest());
    }

    static MessageDigest digest(String algorithm) {
        try {
            return MessageDigest.getInstance(algorithm);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
