package dev.isoline.worklist;

import java.nio.ByteBuffer;
import java.nio.channels.NonWritableChannelException;
import java.nio.channels.SeekableByteChannel;

/** Bytes in memory, to be read as a channel. */
final class HeldBytes implements SeekableByteChannel {

    private final ByteBuffer bytes;

    HeldBytes(byte[] bytes) {
        this.bytes = ByteBuffer.wrap(bytes);
    }

    @Override
    public int read(ByteBuffer target) {
        if (!bytes.hasRemaining()) {
            return -1;
        }
        int length = Math.min(target.remaining(), bytes.remaining());
        target.put(bytes.slice(bytes.position(), length));
        bytes.position(bytes.position() + length);
        return length;
    }

    @Override
    public long position() {
        return bytes.position();
    }

    @Override
    public SeekableByteChannel position(long position) {
        bytes.position((int) position);
        return this;
    }

    @Override
    public long size() {
        return bytes.limit();
    }

    @Override
    public int write(ByteBuffer source) {
        throw new NonWritableChannelException();
    }

    @Override
    public SeekableByteChannel truncate(long size) {
        throw new NonWritableChannelException();
    }

    @Override
    public boolean isOpen() {
        return true;
    }

    @Override
    public void close() {
        // There is nothing to let go of.
    }
}
