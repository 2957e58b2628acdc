package dev.isoline.ecg;

/**
 * Consecutive samples of all leads.
 *
 * @param first position of the first sample on the recording's time axis, counted from its start;
 *     where it is larger than the end of the block before, there is a gap between the two
 * @param samples {@code samples[lead][i]}, all leads of one length; {@link #MISSING} where the
 *     recording says it has none
 */
public record Block(long first, int[][] samples) {

    /** A sample the recorder did not take. */
    public static final int MISSING = Integer.MIN_VALUE;

    public int length() {
        return samples.length == 0 ? 0 : samples[0].length;
    }

    /** Position just after the last sample. */
    public long end() {
        return first + length();
    }
}
