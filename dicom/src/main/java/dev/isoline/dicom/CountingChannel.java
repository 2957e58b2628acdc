package dev.isoline.dicom;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.WritableByteChannel;

/** Counts what passes, to hold a bulk value to the length it announced. */
final class CountingChannel implements WritableByteChannel {

    private final WritableByteChannel target;
    private long count;

    CountingChannel(WritableByteChannel target) {
        this.target = target;
    }

    long count() {
        return count;
    }

    @Override
    public int write(ByteBuffer source) throws IOException {
        int written = target.write(source);
        count += written;
        return written;
    }

    @Override
    public boolean isOpen() {
        return target.isOpen();
    }

    @Override
    public void close() {
        // the target belongs to the writer's caller
    }
}
