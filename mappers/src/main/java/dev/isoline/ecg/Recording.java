package dev.isoline.ecg;

import java.io.Closeable;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** A recording read from front to back; never more of it in memory than one {@link Block}. */
public interface Recording extends Closeable {

    RecordingHeader header();

    /**
     * The next block in time, empty at the end.
     *
     * @throws RecordingException when the rest cannot be read as its format says
     */
    Optional<Block> next() throws IOException;

    /** Beats a person or another program marked, in time order; empty when the file brings none. */
    List<Beat> referenceBeats() throws IOException;

    /**
     * Stretches that whoever marked the reference beats called ventricular flutter or fibrillation:
     * they hold no single beats, and no interval reaches across them.
     */
    default List<Stretch> flutter() throws IOException {
        return List.of();
    }
}
