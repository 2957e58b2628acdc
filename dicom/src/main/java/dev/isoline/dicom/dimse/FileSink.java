package dev.isoline.dicom.dimse;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.WritableByteChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;

/**
 * A new file for an object. Once writing has failed, for want of room say, what still comes is
 * dropped: the association is not to blame.
 */
final class FileSink implements WritableByteChannel {

    private final FileChannel file;
    private IOException failure;

    private FileSink(FileChannel file) {
        this.file = file;
    }

    /**
     * @throws IOException where it exists or cannot be made
     */
    static FileSink create(Path path) throws IOException {
        return new FileSink(
                FileChannel.open(path, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE));
    }

    Optional<IOException> failure() {
        return Optional.ofNullable(failure);
    }

    @Override
    public int write(ByteBuffer source) {
        int count = source.remaining();
        try {
            while (failure == null && source.hasRemaining()) {
                file.write(source);
            }
        } catch (IOException e) {
            failure = e;
        }
        source.position(source.limit());
        return count;
    }

    @Override
    public boolean isOpen() {
        return file.isOpen();
    }

    @Override
    public void close() {
        try {
            file.close();
        } catch (IOException e) {
            failure = failure == null ? e : failure;
        }
    }
}
