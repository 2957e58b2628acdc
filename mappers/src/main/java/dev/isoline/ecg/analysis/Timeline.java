package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Block;
import dev.isoline.ecg.Stretch;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/** What of a recording's time axis was recorded, and where its gaps begin. */
final class Timeline {

    private final double hz;
    private long[] starts = new long[16];
    private long[] ends = new long[16];
    private int parts;

    Timeline(double hz) {
        this.hz = hz;
    }

    void add(Block block) {
        if (parts > 0 && ends[parts - 1] == block.first()) {
            ends[parts - 1] = block.end();
            return;
        }
        if (parts == starts.length) {
            starts = Arrays.copyOf(starts, 2 * parts);
            ends = Arrays.copyOf(ends, 2 * parts);
        }
        starts[parts] = block.first();
        ends[parts++] = block.end();
    }

    double hz() {
        return hz;
    }

    /** Position after the last sample. */
    long end() {
        return parts == 0 ? 0 : ends[parts - 1];
    }

    int gaps() {
        return Math.max(0, parts - 1);
    }

    int seconds() {
        return (int) Math.ceil(end() / hz);
    }

    long recorded() {
        long samples = 0;
        for (int i = 0; i < parts; i++) {
            samples += ends[i] - starts[i];
        }
        return samples;
    }

    /** The gap-free parts. */
    List<Stretch> recordedParts() {
        var recorded = new ArrayList<Stretch>();
        for (int i = 0; i < parts; i++) {
            recorded.add(new Stretch(starts[i], ends[i]));
        }
        return List.copyOf(recorded);
    }

    /** What was recorded within the seconds marked, as stretches within one part each. */
    List<Stretch> recordedStretches(BitSet seconds) {
        var stretches = new ArrayList<Stretch>();
        for (int i = 0; i < parts; i++) {
            int s = seconds.nextSetBit((int) (starts[i] / hz));
            while (s >= 0 && s * hz < ends[i]) {
                int next = seconds.nextClearBit(s);
                long from = Math.max(starts[i], (long) Math.ceil(s * hz));
                long to = Math.min(ends[i], (long) Math.ceil(next * hz));
                stretches.add(new Stretch(from, to));
                s = seconds.nextSetBit(next);
            }
        }
        return List.copyOf(stretches);
    }

    /** Recorded samples within the seconds marked. */
    long recordedIn(BitSet seconds) {
        long samples = 0;
        int part = 0;
        for (int s = seconds.nextSetBit(0); s >= 0; s = seconds.nextSetBit(s + 1)) {
            long from = (long) Math.ceil(s * hz);
            long to = (long) Math.ceil((s + 1) * hz);
            while (part < parts && ends[part] <= from) {
                part++;
            }
            for (int i = part; i < parts && starts[i] < to; i++) {
                samples += Math.min(to, ends[i]) - Math.max(from, starts[i]);
            }
        }
        return samples;
    }

    /** Whether a gap lies between two samples. */
    boolean gapBetween(long earlier, long later) {
        int part = Arrays.binarySearch(starts, 0, parts, later);
        return starts[Math.max(0, part >= 0 ? part : -part - 2)] > earlier;
    }
}
