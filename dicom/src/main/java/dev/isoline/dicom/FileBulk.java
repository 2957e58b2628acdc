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

    @Override
    public void writeTo(WritableByteChannel target) throws IOException {
        var buffer = ByteBuffer.allocate((int) Math.min(length, 64 * 1024));
        source.position(offset);
        for (long left = length; left > 0; left -= buffer.limit()) {
            buffer.clear().limit((int) Math.min(left, buffer.capacity()));
            fill(buffer);
            while (buffer.hasRemaining()) {
                target.write(buffer);
            }
        }
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
