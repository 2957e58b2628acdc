package dev.isoline.recordings;

import dev.isoline.ecgdicom.ObjectSink;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/**
 * DICOM objects as files of a folder, named by their SOP Instance UID; a file has its name only
 * once it is complete.
 */
public record ObjectFolder(Path folder) implements ObjectSink {

    /** The file of an object that is complete. */
    public Path file(String sopInstanceUid) {
        return folder.resolve(sopInstanceUid + ".dcm");
    }

    /** A file that is there already, under the name of an object of this folder. */
    void link(Path existing, String sopInstanceUid) throws IOException {
        Files.createDirectories(folder);
        Path target = file(sopInstanceUid);
        if (!Files.exists(target)) {
            Files.createLink(target, existing);
        }
    }

    @Override
    public Target open(String sopInstanceUid) throws IOException {
        Files.createDirectories(folder);
        return new Part(folder.resolve(sopInstanceUid + ".part"), file(sopInstanceUid));
    }

    private static final class Part implements Target {

        private final Path part;
        private final Path whole;
        private final FileChannel channel;
        private final EarlyForce early;

        Part(Path part, Path whole) throws IOException {
            this.part = part;
            this.whole = whole;
            this.channel =
                    FileChannel.open(
                            part,
                            StandardOpenOption.CREATE,
                            StandardOpenOption.TRUNCATE_EXISTING,
                            StandardOpenOption.WRITE);
            this.early = new EarlyForce(channel);
        }

        @Override
        public SeekableByteChannel channel() {
            return channel;
        }

        @Override
        public void complete() throws IOException {
            early.close();
            channel.force(true);
            channel.close();
            Files.move(part, whole, StandardCopyOption.ATOMIC_MOVE);
        }

        @Override
        public void close() throws IOException {
            try {
                early.close();
            } finally {
                channel.close();
                Files.deleteIfExists(part);
            }
        }
    }
}
