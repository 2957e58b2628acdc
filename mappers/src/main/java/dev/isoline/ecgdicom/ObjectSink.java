package dev.isoline.ecgdicom;

import java.io.Closeable;
import java.io.IOException;
import java.nio.channels.SeekableByteChannel;

/** Where objects go: the caller's files, spool or archive. */
public interface ObjectSink {

    /** A new target for the Part 10 file of one object. */
    Target open(String sopInstanceUid) throws IOException;

    /** One object being written; what is closed before it is complete has to vanish. */
    interface Target extends Closeable {

        /** Empty at first, to be written and positioned; closed by {@link #close}. */
        SeekableByteChannel channel();

        /** All is written and within the IOD's limits. */
        void complete() throws IOException;
    }
}
