package dev.isoline.dicom;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.nio.channels.WritableByteChannel;

/**
 * A value left where it was read.
 *
 * @param source open as long as the value is used; its position is moved by reading
 * @param offset of the first byte
 * @param length in bytes
 */
public record FileBulk(SeekableByteChannel source, long offset, long length) implements BulkValue {

    private static final int MOST = 64 * 1024;
    private static final int MUCH = 1 << 20;

    @Override
    public void writeTo(WritableByteChannel target) throws IOException {
        ByteBuffer buffer = buffer();
        source.position(offset);
        for (long left = length; left > 0; left -= buffer.limit()) {
            buffer.clear().limit((int) Math.min(left, buffer.capacity()));
            fill(buffer);
            while (buffer.hasRemaining()) {
                target.write(buffer);
            }
        }
    }

    /** Outside the heap where much is copied: channels of the system copy once less then. */
    private ByteBuffer buffer() {
        return length >= MUCH
                ? ByteBuffer.allocateDirect(MOST)
                : ByteBuffer.allocate((int) Math.min(length, MOST));
    }

    private void fill(ByteBuffer buffer) throws IOException {
        while (buffer.hasRemaining()) {
            if (source.read(buffer) < 0) {
                throw new EOFException("the source of a bulk value ended early");
            }
        }
        buffer.flip();
    }
}
