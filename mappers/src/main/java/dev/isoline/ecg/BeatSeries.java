package dev.isoline.ecg;

import java.util.AbstractList;
import java.util.Arrays;
import java.util.RandomAccess;
import java.util.function.LongPredicate;

/** Beats in time order, eight bytes each: a fortnight of them stays small. */
public final class BeatSeries extends AbstractList<Beat> implements RandomAccess {

    private static final Beat.Kind[] KINDS = Beat.Kind.values();
    private static final int KIND_BITS = 3;

    private long[] beats = new long[1024];
    private int size;

    /** Appends a beat; its sample is not negative. */
    public void add(long sample, Beat.Kind kind) {
        if (size == beats.length) {
            beats = Arrays.copyOf(beats, size * 2);
        }
        beats[size++] = sample << KIND_BITS | kind.ordinal();
        modCount++;
    }

    @Override
    public boolean add(Beat beat) {
        add(beat.sample(), beat.kind());
        return true;
    }

    /** Leaves those whose position fits. */
    public void keep(LongPredicate fits) {
        int kept = 0;
        for (int i = 0; i < size; i++) {
            if (fits.test(sample(i))) {
                beats[kept++] = beats[i];
            }
        }
        modCount += kept == size ? 0 : 1;
        size = kept;
    }

    /** Position of a beat without making an object of it. */
    public long sample(int index) {
        return beats[index] >> KIND_BITS;
    }

    public Beat.Kind kind(int index) {
        return KINDS[(int) (beats[index] & (1 << KIND_BITS) - 1)];
    }

    @Override
    public Beat get(int index) {
        if (index >= size) {
            throw new IndexOutOfBoundsException(index);
        }
        return new Beat(sample(index), kind(index));
    }

    @Override
    public int size() {
        return size;
    }
}
