package dev.isoline.ecg;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.ReadableByteChannel;

/** Reads a channel, which may hand out fewer bytes than asked, into whole buffers. */
public final class ChannelBytes {

    /** Room that is made before a byte of it is there. */
    private static final int AT_ONCE = 1 << 14;

    private ChannelBytes() {}

    /** Up to {@code count} bytes, little-endian; fewer only at the end of the channel. */
    public static ByteBuffer upTo(int count, ReadableByteChannel channel) throws IOException {
        var bytes = allocate(Math.min(count, AT_ONCE));
        while (fill(bytes, channel) && bytes.capacity() < count) {
            int more = Math.min(count, 2 * bytes.capacity());
            bytes = allocate(more).put(bytes.flip());
        }
        return bytes.flip();
    }

    private static ByteBuffer allocate(int bytes) {
        return ByteBuffer.allocate(bytes).order(ByteOrder.LITTLE_ENDIAN);
    }

    /** Fills the buffer as far as the channel goes; false when it ended before. */
    public static boolean fill(ByteBuffer bytes, ReadableByteChannel channel) throws IOException {
        while (bytes.hasRemaining()) {
            if (channel.read(bytes) < 0) {
                return false;
            }
        }
        return true;
    }

    /** Passes over {@code count} bytes; false when the channel ended before. */
    public static boolean skip(long count, ReadableByteChannel channel) throws IOException {
        var scratch = ByteBuffer.allocate(8192);
        for (long left = count; left > 0; left -= scratch.position()) {
            scratch.clear().limit((int) Math.min(left, scratch.capacity()));
            if (!fill(scratch, channel)) {
                return false;
            }
        }
        return true;
    }
}
