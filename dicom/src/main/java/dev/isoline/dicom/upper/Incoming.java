package dev.isoline.dicom.upper;

import java.io.EOFException;
import java.io.IOException;
import java.net.SocketTimeoutException;
import java.nio.ByteBuffer;

/** Bytes from the peer, buffered; big endian. Each wait for more is timed. */
final class Incoming {

    private final Transport transport;
    private final Watch watch;
    private final ByteBuffer buffer = Buffers.take().limit(0);

    Incoming(Transport transport, Watch watch) {
        this.transport = transport;
        this.watch = watch;
    }

    /** At least so many bytes to take from the buffer. */
    ByteBuffer atLeast(int count, Wait wait) throws IOException {
        while (buffer.remaining() < count) {
            fill(wait);
        }
        return buffer;
    }

    byte[] bytes(int count, Wait wait) throws IOException {
        byte[] bytes = new byte[count];
        for (int at = 0; at < count; ) {
            int part = Math.min(atLeast(1, wait).remaining(), count - at);
            buffer.get(bytes, at, part);
            at += part;
        }
        return bytes;
    }

    void skip(long count, Wait wait) throws IOException {
        for (long left = count; left > 0; ) {
            int part = (int) Math.min(atLeast(1, wait).remaining(), left);
            buffer.position(buffer.position() + part);
            left -= part;
        }
    }

    /** The next bytes without a copy, at most so many; to be used before anything else is read. */
    ByteBuffer some(long most, Wait wait) throws IOException {
        int part = (int) Math.min(atLeast(1, wait).remaining(), most);
        ByteBuffer some = buffer.slice(buffer.position(), part);
        buffer.position(buffer.position() + part);
        return some;
    }

    /** True where something arrives in time, or the peer closes. */
    boolean arrives(int millis) throws IOException {
        if (buffer.hasRemaining()) {
            return true;
        }
        buffer.clear();
        try {
            transport.read(buffer, millis);
            return true;
        } catch (SocketTimeoutException none) {
            return false;
        } finally {
            buffer.flip();
        }
    }

    private void fill(Wait wait) throws IOException {
        buffer.compact();
        try {
            if (read(wait) < 0) {
                throw new EOFException("the peer closed the connection");
            }
        } finally {
            buffer.flip();
        }
    }

    private int read(Wait wait) throws IOException {
        if (wait != Wait.ARTIM) { // which the table starts and stops
            watch.start(wait);
        }
        int count = transport.read(buffer);
        if (wait != Wait.ARTIM) {
            watch.stop(wait);
        }
        return count;
    }

    /** Gives the buffer back. */
    void end() {
        Buffers.give(buffer);
    }
}
