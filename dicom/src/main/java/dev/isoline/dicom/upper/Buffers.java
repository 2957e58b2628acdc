package dev.isoline.dicom.upper;

import java.nio.ByteBuffer;
import java.util.concurrent.ArrayBlockingQueue;

/** Direct buffers, used again and again: the system is slow to give them and to take them back. */
public final class Buffers {

    /** Large enough for a PDU of 256 KiB with its headers. */
    static final int SIZE = 256 * 1024 + 64;

    private static final ArrayBlockingQueue<ByteBuffer> FREE = new ArrayBlockingQueue<>(16);

    private Buffers() {}

    public static ByteBuffer take() {
        ByteBuffer buffer = FREE.poll();
        return buffer == null ? ByteBuffer.allocateDirect(SIZE) : buffer.clear();
    }

    /** The buffer must not be used any more. */
    public static void give(ByteBuffer buffer) {
        FREE.offer(buffer);
    }
}
