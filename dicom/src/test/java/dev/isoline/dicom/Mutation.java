package dev.isoline.dicom;

import java.util.Arrays;
import java.util.Random;

/** Changes bytes the way hostile and broken input does; the same seed, the same changes. */
public final class Mutation {

    /** Lengths and tags that mean something, PS3.5 7.5, and ends of ranges. */
    private static final int[][] TELLING = {
        {0xFF, 0xFF, 0xFF, 0xFF},
        {0xFE, 0xFF, 0x00, 0xE0},
        {0xFE, 0xFF, 0x0D, 0xE0},
        {0xFE, 0xFF, 0xDD, 0xE0},
        {0xFE, 0xFF, 0xFF, 0xFF},
        {0xFF, 0xFF, 0xFF, 0x7F},
        {0, 0, 0, 0},
        {0xFF, 0xFF},
        {'S', 'Q'},
        {'U', 'N'},
        {'O', 'W'},
        {'D', 'S'},
        {0x08, 0x00, 0x05, 0x00}
    };

    private final Random random;

    public Mutation(long seed) {
        this.random = new Random(seed);
    }

    /** A changed copy. */
    public byte[] of(byte[] seed) {
        byte[] bytes = seed.clone();
        for (int n = 1 + random.nextInt(4); n > 0 && bytes.length > 0; n--) {
            bytes = once(bytes);
        }
        return bytes;
    }

    private byte[] once(byte[] bytes) {
        int at = random.nextInt(bytes.length);
        switch (random.nextInt(8)) {
            case 0:
                return Arrays.copyOf(bytes, at);
            case 1:
                return moved(bytes, at);
            case 2, 3:
                return overwritten(bytes, at);
            case 4:
                bytes[at] ^= (byte) (1 << random.nextInt(8));
                return bytes;
            default:
                bytes[at] = (byte) random.nextInt(256);
                return bytes;
        }
    }

    /** A piece again, or a piece less. */
    private byte[] moved(byte[] bytes, int at) {
        int from = random.nextInt(bytes.length);
        byte[] moved = Arrays.copyOf(bytes, at + bytes.length - from);
        System.arraycopy(bytes, from, moved, at, bytes.length - from);
        return moved;
    }

    private byte[] overwritten(byte[] bytes, int at) {
        int[] telling = TELLING[random.nextInt(TELLING.length)];
        for (int i = 0; i < telling.length && at + i < bytes.length; i++) {
            bytes[at + i] = (byte) telling[i];
        }
        return bytes;
    }
}
