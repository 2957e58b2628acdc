package dev.isoline.ecg;

import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;

/** Bytes in memory read as a file is. */
public final class SeekableFile implements SeekableByteChannel {

    private final byte[] bytes;
    private long position;

    public SeekableFile(byte[] bytes) {
        this.bytes = bytes;
    }

    @Override
    public int read(ByteBuffer target) {
        if (position >= bytes.length) {
            return target.hasRemaining() ? -1 : 0;
        }
        int count = (int) Math.min(target.remaining(), bytes.length - position);
        target.put(bytes, (int) position, count);
        position += count;
        return count;
    }

    @Override
    public long position() {
        return position;
    }

    @Override
    public SeekableByteChannel position(long newPosition) {
        position = newPosition;
        return this;
    }

    @Override
    public long size() {
        return bytes.length;
    }

    @Override
    public int write(ByteBuffer source) {
        throw new UnsupportedOperationException();
    }

    @Override
    public SeekableByteChannel truncate(long size) {
        throw new UnsupportedOperationException();
    }

    @Override
    public boolean isOpen() {
        return true;
    }

    @Override
    public void close() {
        // nothing is held
    }
}
