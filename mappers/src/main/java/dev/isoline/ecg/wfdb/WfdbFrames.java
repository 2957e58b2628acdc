package dev.isoline.ecg.wfdb;

import dev.isoline.ecg.Block;
import dev.isoline.ecg.Lead;
import java.io.Closeable;
import java.io.IOException;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/** The frames of a WFDB record, be it of one segment or of several. */
interface WfdbFrames extends Closeable {

    List<Lead> leads();

    /** Samples of a lead in a frame. */
    int perFrame();

    /** Frames of the record, gaps included. */
    long frames();

    /** Numbers of the signal formats, such as {@code 16+212}. */
    String formats();

    Optional<LocalDateTime> start();

    /** The next samples of the leads, empty at the end. */
    Optional<Block> next() throws IOException;
}
