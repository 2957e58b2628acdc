package dev.isoline.ecg.analysis;

import dev.isoline.ecg.Block;
import dev.isoline.ecg.Lead;
import java.util.BitSet;

/**
 * Marks the seconds in which one lead cannot be used: no samples for 0.2 s, saturated for 0.2 s, or
 * no change at all for 5 s. Saturated is a value held at the lead's own extreme, more than 1 mV
 * from its mean. Thresholds: own choice, no source.
 */
final class LeadQuality {

    private static final double SHORT_SECONDS = 0.2;
    private static final double FLAT_SECONDS = 5;
    private static final double MEAN_SECONDS = 10;
    private static final double AWAY_MICROVOLTS = 1000;

    private final double hz;
    private final double away;
    private final BitSet unusable = new BitSet();
    private int value = Block.MISSING;
    private long run;
    private int lowest = Integer.MAX_VALUE;
    private int highest = Integer.MIN_VALUE;
    private double mean = Double.NaN;
    private long end;

    LeadQuality(Lead lead, double hz) {
        this.hz = hz;
        away =
                lead.calibrated()
                        ? AWAY_MICROVOLTS / Math.abs(lead.sensitivity())
                        : Math.scalb(1.0, lead.bitsStored() - 3);
    }

    void take(long first, int[] samples) {
        if (first != end) {
            run = 0;
        }
        for (int i = 0; i < samples.length; i++) {
            run = samples[i] == value ? run + 1 : 1;
            value = samples[i];
            if (run > limit()) {
                mark(first + i);
            } else if (value != Block.MISSING) {
                learn();
            }
        }
        end = first + samples.length;
    }

    private double limit() {
        boolean brief = value == Block.MISSING || isSaturated();
        return (brief ? SHORT_SECONDS : FLAT_SECONDS) * hz;
    }

    private boolean isSaturated() {
        return (value == lowest || value == highest) && Math.abs(value - mean) > away;
    }

    private void learn() {
        lowest = Math.min(lowest, value);
        highest = Math.max(highest, value);
        mean = Double.isNaN(mean) ? value : mean + (value - mean) / (MEAN_SECONDS * hz);
    }

    /** The whole run counts, also what came before it was long enough. */
    private void mark(long sample) {
        int second = (int) (sample / hz);
        if (!unusable.get(second)) {
            unusable.set((int) ((sample - run + 1) / hz), second + 1);
        }
    }

    BitSet unusableSeconds() {
        return unusable;
    }
}
