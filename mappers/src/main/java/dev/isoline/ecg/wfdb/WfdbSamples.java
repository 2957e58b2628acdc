package dev.isoline.ecg.wfdb;

import java.nio.ByteBuffer;

/** Takes samples out of the bytes of a signal file, format by format as signal(5) lists them. */
final class WfdbSamples {

    private WfdbSamples() {}

    /**
     * The first samples of bytes that begin with a group; a group the file cuts short is followed
     * by zeros.
     */
    static void unpack(WfdbFormat format, ByteBuffer bytes, int[] into, int from, int count) {
        switch (format) {
            case F16 -> words(bytes, into, from, count);
            case F212 -> twelveBits(bytes, into, from, count);
            default -> {
                for (int i = 0; i < count; i++) {
                    into[from + i] = sample(format, bytes, i);
                }
            }
        }
    }

    private static int sample(WfdbFormat format, ByteBuffer bytes, int index) {
        return switch (format) {
            case F24 ->
                    b(bytes, 3 * index)
                            | b(bytes, 3 * index + 1) << 8
                            | bytes.get(3 * index + 2) << 16;
            case F32 -> bytes.getInt(4 * index);
            case F61 -> bytes.get(2 * index) << 8 | b(bytes, 2 * index + 1);
            case F80 -> b(bytes, index) - 0x80;
            case F160 -> pair(bytes, 2 * index) - 0x8000;
            case F310 -> ofTwoPairs(bytes, index / 3 * 4, index % 3);
            case F311 -> signed10(bytes.getInt(index / 3 * 4) >> 10 * (index % 3));
            default -> format.missing();
        };
    }

    private static void words(ByteBuffer bytes, int[] into, int from, int count) {
        var words = new short[count];
        bytes.asShortBuffer().get(words);
        for (int i = 0; i < count; i++) {
            into[from + i] = words[i];
        }
    }

    /** The high halves share the middle byte. */
    private static void twelveBits(ByteBuffer bytes, int[] into, int from, int count) {
        var packed = new byte[bytes.remaining()];
        bytes.get(packed);
        for (int i = 0, at = 0; i < count; i += 2, at += 3) {
            int shared = packed[at + 1];
            into[from + i] = signed12((shared & 0x0f) << 8 | packed[at] & 0xff);
            if (i + 1 < count) {
                into[from + i + 1] = signed12((shared & 0xf0) << 4 | packed[at + 2] & 0xff);
            }
        }
    }

    /** The lowest bit of a pair is discarded, its five highest are half of the third sample. */
    private static int ofTwoPairs(ByteBuffer bytes, int at, int index) {
        return index < 2
                ? signed10(pair(bytes, at + 2 * index) >> 1)
                : signed10(pair(bytes, at) >> 11 | pair(bytes, at + 2) >> 11 << 5);
    }

    private static int b(ByteBuffer bytes, int at) {
        return bytes.get(at) & 0xff;
    }

    private static int pair(ByteBuffer bytes, int at) {
        return bytes.getShort(at) & 0xffff;
    }

    private static int signed12(int value) {
        return value << 20 >> 20;
    }

    private static int signed10(int value) {
        return value << 22 >> 22;
    }
}
