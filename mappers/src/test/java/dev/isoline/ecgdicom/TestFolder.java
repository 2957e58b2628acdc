package dev.isoline.ecgdicom;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Objects as files of a folder; an abandoned one is removed. */
public record TestFolder(Path folder) implements ObjectSink {

    @Override
    public Target open(String sopInstanceUid) throws IOException {
        Path file = folder.resolve(sopInstanceUid + ".dcm");
        var channel =
                FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        return new FileTarget(file, channel);
    }

    private static final class FileTarget implements Target {

        private final Path file;
        private final FileChannel channel;
        private boolean complete;

        FileTarget(Path file, FileChannel channel) {
            this.file = file;
            this.channel = channel;
        }

        @Override
        public SeekableByteChannel channel() {
            return channel;
        }

        @Override
        public void complete() {
            complete = true;
        }

        @Override
        public void close() throws IOException {
            channel.close();
            if (!complete) {
                Files.delete(file);
            }
        }
    }
}
