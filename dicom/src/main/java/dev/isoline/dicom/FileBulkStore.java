package dev.isoline.dicom;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.ReadableByteChannel;
import java.nio.channels.SeekableByteChannel;

/**
 * Puts values one behind the other into a file.
 *
 * @param file open for reading and writing as long as the values are used
 */
public record FileBulkStore(SeekableByteChannel file) implements BulkStore {

    @Override
    public BulkValue keep(int tag, long length, ReadableByteChannel bytes) throws IOException {
        long offset = file.size();
        file.position(offset);
        var buffer = ByteBuffer.allocate((int) Math.min(Math.max(length, 1), 64 * 1024));
        while (bytes.read(buffer.clear()) >= 0) {
            buffer.flip();
            while (buffer.hasRemaining()) {
                file.write(buffer);
            }
        }
        return new FileBulk(file, offset, length);
    }
}
