package dev.isoline.ecg.rhythm;

import dev.isoline.ecg.Beat;
import dev.isoline.ecg.Stretch;
import java.util.List;

/**
 * The beats of a recording on its time axis: all that rhythm and rates are measured from, the same
 * for beats a program found and beats a person marked.
 *
 * @param beats in order of time
 * @param origin who gave them their classes
 * @param hz sampling frequency
 * @param recorded what of the time axis holds samples, one stretch for each gap-free part
 * @param unusable what of the recorded stretches no lead can be used in, in order of time
 * @param flutter where single beats cannot be told apart, in order of time
 */
public record BeatTrack(
        List<Beat> beats,
        Origin origin,
        double hz,
        List<Stretch> recorded,
        List<Stretch> unusable,
        List<Stretch> flutter) {

    /** Who gave the beats their classes. */
    public enum Origin {
        /** The recording brings them. */
        REFERENCE,
        /** The program did. */
        PROGRAM,
        /** Nobody. */
        NOBODY
    }

    boolean classified() {
        return origin != Origin.NOBODY;
    }

    /** Position after the last sample. */
    long end() {
        return recorded.isEmpty() ? 0 : recorded.get(recorded.size() - 1).to();
    }
}
