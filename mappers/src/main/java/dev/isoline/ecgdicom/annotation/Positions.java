package dev.isoline.ecgdicom.annotation;

import dev.isoline.ecg.Stretch;
import java.util.Optional;

/**
 * Positions on the recording's time axis as Referenced Sample Positions (0040,A132): the first
 * sample of the object is 1 (PS3.3 C.10.10.1.2).
 */
final class Positions {

    /** Positions an element holds: VR UL has four bytes each and a 16-bit length, PS3.5 7.1.2. */
    static final int MOST = 0xFFFE / Integer.BYTES;

    private Positions() {}

    static Optional<Long> of(long sample, Stretch object) {
        return sample >= object.from() && sample < object.to()
                ? Optional.of(sample - object.from() + 1)
                : Optional.empty();
    }

    /** First and last sample of what of the stretch lies in the object. */
    static Optional<long[]> within(Stretch stretch, Stretch object) {
        long from = Math.max(stretch.from(), object.from());
        long to = Math.min(stretch.to(), object.to());
        return from < to
                ? Optional.of(new long[] {from - object.from() + 1, to - object.from()})
                : Optional.empty();
    }
}
