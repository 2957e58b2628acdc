package dev.isoline.dicom;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.ReadableByteChannel;
import java.nio.channels.SeekableByteChannel;

/** Little endian reading from a channel, with the position known at every step. */
final class ByteSource {

    /** Size of a stream whose end is not known. */
    static final long UNKNOWN = Long.MAX_VALUE;

    private final ReadableByteChannel channel;
    private final SeekableByteChannel file;
    private final long size;
    private final ByteBuffer buffer = ByteBuffer.allocate(8192).order(ByteOrder.LITTLE_ENDIAN);
    private long bufferEnd;
    private int lastTag;

    /** A source that can be read again, so that bulk may stay in it. */
    ByteSource(SeekableByteChannel file) throws IOException {
        this.channel = file;
        this.file = file;
        this.bufferEnd = file.position();
        this.size = file.size();
        buffer.limit(0);
    }

    /** A source that is read once. */
    ByteSource(ReadableByteChannel stream) {
        this.channel = stream;
        this.file = null;
        this.size = UNKNOWN;
        buffer.limit(0);
    }

    /** The file the bytes stay in; null where they come once. */
    SeekableByteChannel file() {
        return file;
    }

    long position() {
        return bufferEnd - buffer.remaining();
    }

    long size() {
        return size;
    }

    /** True where at least one byte is left. */
    boolean hasMore() throws IOException {
        return size == UNKNOWN ? buffer.hasRemaining() || readMore() : position() < size;
    }

    /** The tag read last; 0 before the first. */
    int lastTag() {
        return lastTag;
    }

    /** The next tag without moving past it. */
    int peekTag() throws IOException {
        fill(4);
        int at = buffer.position();
        return tag(buffer.getShort(at), buffer.getShort(at + 2));
    }

    int tag() throws IOException {
        fill(4);
        lastTag = tag(buffer.getShort(), buffer.getShort());
        return lastTag;
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
        var target = ByteBuffer.wrap(bytes);
        while (target.hasRemaining()) {
            transfer(target);
        }
        return bytes;
    }

    /** Moves at least one byte of those at hand. */
    private void transfer(ByteBuffer target) throws IOException {
        fill(1);
        int count = Math.min(buffer.remaining(), target.remaining());
        target.put(target.position(), buffer, buffer.position(), count);
        target.position(target.position() + count);
        buffer.position(buffer.position() + count);
    }

    /** Passes over bytes of a file. */
    void skip(long count) {
        if (count <= buffer.remaining()) {
            buffer.position(buffer.position() + (int) count);
        } else {
            bufferEnd = position() + count;
            buffer.limit(0);
        }
    }

    /** The next bytes as a channel that ends after them. */
    ReadableByteChannel part(long count) {
        return new Part(count);
    }

    private final class Part implements ReadableByteChannel {

        private long left;

        Part(long count) {
            this.left = count;
        }

        @Override
        public int read(ByteBuffer target) throws IOException {
            if (left == 0) {
                return -1;
            }
            int before = target.position();
            int limit = target.limit();
            target.limit((int) Math.min(limit, before + left));
            if (target.hasRemaining()) {
                transfer(target);
            }
            target.limit(limit);
            left -= target.position() - before;
            return target.position() - before;
        }

        @Override
        public boolean isOpen() {
            return channel.isOpen();
        }

        @Override
        public void close() {
            // the source goes on behind it
        }
    }

    private void fill(int wanted) throws IOException {
        while (buffer.remaining() < wanted) {
            if (!readMore()) {
                throw cutOff();
            }
        }
    }

    private boolean readMore() throws IOException {
        if (file != null) {
            file.position(bufferEnd);
        }
        buffer.compact();
        int read = channel.read(buffer);
        buffer.flip();
        bufferEnd += Math.max(read, 0);
        return read >= 0;
    }

    private DicomException cutOff() {
        return lastTag == 0
                ? new DicomException("The input ends before the first element.")
                : new DicomException(lastTag, "is cut off where the input ends");
    }
}
