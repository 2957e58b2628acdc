package dev.isoline.dicom;

import java.io.IOException;
import java.nio.channels.WritableByteChannel;

/** A value too large to be held: its length, and how to get its little endian bytes written. */
public interface BulkValue {

    /** Bytes, at most {@link #MAX}; an odd length is padded on writing. */
    long length();

    /** Writes exactly {@link #length()} bytes. */
    void writeTo(WritableByteChannel target) throws IOException;

    /** Largest even value of a 32-bit length that is not "undefined", PS3.5 7.1.2. */
    long MAX = 0xFFFF_FFFEL;
}
