package dev.isoline.ecg;

import java.util.List;

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

    /** Blocks that follow one another without a gap as one. */
    static Block join(List<Block> blocks) {
        if (blocks.size() == 1) {
            return blocks.get(0);
        }
        int length = blocks.stream().mapToInt(Block::length).sum();
        var joined = new int[blocks.get(0).samples.length][length];
        int at = 0;
        for (var block : blocks) {
            for (int lead = 0; lead < joined.length; lead++) {
                System.arraycopy(block.samples[lead], 0, joined[lead], at, block.length());
            }
            at += block.length();
        }
        return new Block(blocks.get(0).first, joined);
    }

    public int length() {
        return samples.length == 0 ? 0 : samples[0].length;
    }

    /** Position just after the last sample. */
    public long end() {
        return first + length();
    }
}
