package dev.isoline.recordings;

import dev.isoline.ecg.RecordingException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.ReadableByteChannel;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;

/** One file of an archive while it is read; it may not grow beyond what the archive announces. */
final class ArchivedFile implements ReadableByteChannel {

    private final ZipFile zip;
    private final ReadableByteChannel channel;
    private long left;

    ArchivedFile(ZipFile zip, InputStream stream, long size) {
        this.zip = zip;
        this.channel = Channels.newChannel(stream);
        this.left = size;
    }

    @Override
    public int read(ByteBuffer bytes) throws IOException {
        try {
            int count = channel.read(bytes);
            left -= Math.max(count, 0);
            if (left < 0) {
                throw new RecordingException(
                        "A file in the zip archive is longer than the archive says.");
            }
            return count;
        } catch (ZipException e) {
            throw new RecordingException("The zip archive is damaged or incomplete.");
        }
    }

    @Override
    public boolean isOpen() {
        return channel.isOpen();
    }

    @Override
    public void close() throws IOException {
        channel.close();
        zip.close();
    }
}
