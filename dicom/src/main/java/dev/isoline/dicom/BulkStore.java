package dev.isoline.dicom;

import java.io.IOException;
import java.nio.channels.ReadableByteChannel;

/** Where values too long to hold go while a stream is read that cannot be read again. */
public interface BulkStore {

    /**
     * Takes a value.
     *
     * @param bytes the value, all of which must be read; it ends after {@code length} bytes
     * @return how to get it back
     */
    BulkValue keep(int tag, long length, ReadableByteChannel bytes) throws IOException;

    /** Refuses every value that is longer than a reader holds. */
    BulkStore NONE =
            (tag, length, bytes) -> {
                throw new DicomException(tag, "is longer than is accepted here");
            };
}
