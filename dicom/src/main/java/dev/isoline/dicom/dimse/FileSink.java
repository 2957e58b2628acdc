package dev.isoline.dicom.dimse;

import dev.isoline.dicom.upper.Buffers;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.WritableByteChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;

/**
 * A new file for an object; small fragments are gathered before they are written. Once writing has
 * failed, for want of room say, what still comes is dropped: the association is not to blame.
 */
final class FileSink implements WritableByteChannel {

    /** From this length on, gathering costs more than it saves. */
    private static final int LARGE = 64 * 1024;

    private final FileChannel file;
    private final ByteBuffer gathered = Buffers.take();
    private IOException failure;

    private FileSink(FileChannel file) {
        this.file = file;
    }

    /**
     * Creates the file.
     *
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
        if (count > gathered.remaining() || count >= LARGE) {
            flush();
        }
        if (count >= LARGE) {
            toFile(source);
        } else {
            gathered.put(source);
        }
        source.position(source.limit());
        return count;
    }

    private void flush() {
        toFile(gathered.flip());
        gathered.clear();
    }

    private void toFile(ByteBuffer source) {
        try {
            while (failure == null && source.hasRemaining()) {
                file.write(source);
            }
        } catch (IOException e) {
            failure = e;
        }
    }

    @Override
    public boolean isOpen() {
        return file.isOpen();
    }

    @Override
    public void close() {
        flush();
        Buffers.give(gathered);
        try {
            file.close();
        } catch (IOException e) {
            failure = failure == null ? e : failure;
        }
    }
}
