package dev.isoline.dicom.dimse;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Part10;
import dev.isoline.dicom.ReadLimits;
import dev.isoline.dicom.spi.AcceptedContext;
import dev.isoline.dicom.spi.SopReference;
import java.io.Closeable;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;

/** A Part 10 file to be sent. */
final class StoredFile implements Closeable {

    private final FileChannel channel;
    private final FileMeta meta;

    private StoredFile(FileChannel channel, FileMeta meta) {
        this.channel = channel;
        this.meta = meta;
    }

    static StoredFile open(Path file) throws IOException {
        FileChannel channel = FileChannel.open(file);
        try {
            return new StoredFile(channel, FileMeta.read(channel));
        } catch (IOException | RuntimeException e) {
            channel.close();
            throw e;
        }
    }

    String sopClass() {
        return meta.instance().sopClass();
    }

    SopReference instance() {
        return meta.instance();
    }

    /** True where it can be sent in the context as it is. */
    boolean isIn(AcceptedContext context) {
        return context.role().scu() && context.transferSyntax().uid().equals(meta.transferSyntax());
    }

    /** Positioned at its data set. */
    FileChannel encoded() throws IOException {
        return channel.position(meta.length());
    }

    /** Its data set, to be encoded anew. */
    DataSet dataSet() throws IOException {
        return Part10.read(channel.position(0), ReadLimits.DEFAULT).dataSet();
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
