package dev.isoline.dicom;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.SeekableByteChannel;

/** Little endian reading from a channel, with the position known at every step. */
final class ByteSource {

    private final SeekableByteChannel channel;
    private final long size;
    private final ByteBuffer buffer = ByteBuffer.allocate(8192).order(ByteOrder.LITTLE_ENDIAN);
    private long bufferEnd;

    ByteSource(SeekableByteChannel channel) throws IOException {
        this.channel = channel;
        this.bufferEnd = channel.position();
        this.size = channel.size();
        buffer.limit(0);
    }

    SeekableByteChannel channel() {
        return channel;
    }

    long position() {
        return bufferEnd - buffer.remaining();
    }

    long size() {
        return size;
    }

    /** The next tag without moving past it. */
    int peekTag() throws IOException {
        fill(4);
        int at = buffer.position();
        return tag(buffer.getShort(at), buffer.getShort(at + 2));
    }

    int tag() throws IOException {
        fill(4);
        return tag(buffer.getShort(), buffer.getShort());
    }

    private static int tag(short group, short element) {
        return group << 16 | element & 0xFFFF;
    }

    int unsigned8() throws IOException {
        fill(1);
        return buffer.get() & 0xFF;
    }

    int unsigned16() throws IOException {
        fill(2);
        return buffer.getShort() & 0xFFFF;
    }

    /** A 32-bit length; -1 is "undefined". */
    int length() throws IOException {
        fill(4);
        return buffer.getInt();
    }

    byte[] bytes(int count) throws IOException {
        byte[] bytes = new byte[count];
        for (int at = 0; at < count; ) {
            fill(1);
            int part = Math.min(buffer.remaining(), count - at);
            buffer.get(bytes, at, part);
            at += part;
        }
        return bytes;
    }

    void skip(long count) {
        if (count <= buffer.remaining()) {
            buffer.position(buffer.position() + (int) count);
        } else {
            bufferEnd = position() + count;
            buffer.limit(0);
        }
    }

    private void fill(int wanted) throws IOException {
        if (buffer.remaining() >= wanted) {
            return;
        }
        channel.position(bufferEnd);
        buffer.compact();
        while (buffer.position() < wanted) {
            int read = channel.read(buffer);
            if (read < 0) {
                throw new DicomException(0, "is expected where the input ends");
            }
            bufferEnd += read;
        }
        buffer.flip();
    }
}
