package dev.isoline.dicom;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.NonWritableChannelException;
import java.nio.channels.SeekableByteChannel;

/** Bytes in memory as a channel to read from. */
public final class BytesChannel implements SeekableByteChannel {

    private final byte[] bytes;
    private long position;

    public BytesChannel(byte[] bytes) {
        this.bytes = bytes;
    }

    @Override
    public int read(ByteBuffer target) {
        if (position >= bytes.length) {
            return -1;
        }
        int count = (int) Math.min(target.remaining(), bytes.length - position);
        target.put(bytes, (int) position, count);
        position += count;
        return count;
    }

    @Override
    public int write(ByteBuffer source) {
        throw new NonWritableChannelException();
    }

    @Override
    public SeekableByteChannel truncate(long size) throws IOException {
        throw new NonWritableChannelException();
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
    public boolean isOpen() {
        return true;
    }

    @Override
    public void close() {
        // nothing is held
    }
}
