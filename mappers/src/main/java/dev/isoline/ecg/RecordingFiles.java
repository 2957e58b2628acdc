package dev.isoline.ecg;

import java.io.IOException;
import java.nio.channels.ReadableByteChannel;
import java.util.List;

/**
 * The file, or the files that belong together, of one recording: a folder, an archive, an upload.
 */
public interface RecordingFiles {

    /** Plain names without folders, in a stable order. */
    List<String> names();

    /** Bytes of the named file. */
    long size(String name) throws IOException;

    /** A new channel at the first byte of the named file; the caller closes it. */
    ReadableByteChannel open(String name) throws IOException;
}
