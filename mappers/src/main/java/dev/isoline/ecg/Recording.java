package dev.isoline.ecg;

import java.io.Closeable;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** A recording read from front to back; never more of it in memory than one {@link Block}. */
public interface Recording extends Closeable {

    /** Its notes grow while the recording is read. */
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

    /** Rhythms whoever marked the reference beats named, in time order. */
    default List<RhythmEpisode> rhythms() throws IOException {
        return List.of();
    }

    /**
     * What patient or recorder noted, in time order: complete once the recording was read to its
     * end.
     */
    default List<DiaryEntry> diary() {
        return List.of();
    }

    /**
     * Whether the format has a way to say that a sample is missing; of 16 bits, no sample that was
     * taken is -32768 then.
     */
    default boolean marksMissing() {
        return true;
    }
}
