package dev.isoline.ecg.analysis;

import dev.isoline.ecg.RankedValue;
import java.util.Arrays;

/**
 * Successive beats as the classifier sees them: when they were, and their shape on every lead at
 * about 125 values a second around the R peak.
 */
final class BeatShapes {

    private static final double BEFORE_SECONDS = 0.24;
    private static final double AFTER_SECONDS = 0.32;

    private final int leads;
    private final int before;
    private final int length;
    private final long[] at;
    private final boolean[] first;
    private final float[] clarity;
    private final float[][] weight;
    private final float[][] shape;
    private final float[] unit;
    private int count;
    private int scaled;

    BeatShapes(Pace pace, int leads, int most) {
        this.leads = leads;
        before = pace.steps(BEFORE_SECONDS);
        length = before + pace.steps(AFTER_SECONDS) + 1;
        at = new long[most];
        first = new boolean[most];
        clarity = new float[most];
        weight = new float[most][];
        shape = new float[most][];
        unit = new float[leads];
    }

    /**
     * Appends a beat.
     *
     * @param first whether the recording begins, or begins again, before it
     * @param clarity of the clearest lead, 0 to 1
     * @param weight of each lead, 0 where it cannot be used
     * @param shape lead after lead, {@link #length} values each
     */
    void add(long at, boolean first, double clarity, float[] weight, float[] shape) {
        this.at[count] = at;
        this.first[count] = first;
        this.clarity[count] = (float) clarity;
        this.weight[count] = weight;
        this.shape[count++] = shape;
    }

    /** Appends all beats of another. */
    void addAll(BeatShapes other) {
        for (int i = 0; i < other.count; i++) {
            add(other.at[i], other.first[i], other.clarity[i], other.weight[i], other.shape[i]);
        }
    }

    int count() {
        return count;
    }

    int leads() {
        return leads;
    }

    /** Values of a shape before the R peak. */
    int before() {
        return before;
    }

    /** Values of a shape on one lead. */
    int length() {
        return length;
    }

    long at(int beat) {
        return at[beat];
    }

    boolean isFirst(int beat) {
        return first[beat];
    }

    float clarity(int beat) {
        return clarity[beat];
    }

    float[] weight(int beat) {
        return weight[beat];
    }

    float[] shape(int beat) {
        return shape[beat];
    }

    /** Forgets the first beats. */
    void forget(int beats) {
        int left = count - beats;
        System.arraycopy(at, beats, at, 0, left);
        System.arraycopy(first, beats, first, 0, left);
        System.arraycopy(clarity, beats, clarity, 0, left);
        System.arraycopy(weight, beats, weight, 0, left);
        System.arraycopy(shape, beats, shape, 0, left);
        Arrays.fill(weight, left, count, null);
        Arrays.fill(shape, left, count, null);
        count = left;
        scaled = left;
    }

    /** Gives every lead its own unit, the median height of all beats on it. */
    void normalise() {
        var heights = new double[count];
        for (int lead = 0; lead < leads; lead++) {
            scale(lead, scaled, unit[lead]);
            for (int beat = 0; beat < count; beat++) {
                heights[beat] = height(shape[beat], lead * length);
            }
            float height = (float) RankedValue.middle(heights, count);
            unit[lead] = height > 0 ? height : 1;
            scale(lead, count, 1 / unit[lead]);
        }
        scaled = count;
    }

    private void scale(int lead, int beats, float by) {
        for (int beat = 0; beat < beats; beat++) {
            for (int i = lead * length; i < (lead + 1) * length; i++) {
                shape[beat][i] *= by;
            }
        }
    }

    private float height(float[] shape, int from) {
        float highest = Float.NEGATIVE_INFINITY;
        float lowest = Float.POSITIVE_INFINITY;
        for (int i = from + before / 2; i < from + length - before / 2; i++) {
            highest = Math.max(highest, shape[i]);
            lowest = Math.min(lowest, shape[i]);
        }
        return highest - lowest;
    }
}
