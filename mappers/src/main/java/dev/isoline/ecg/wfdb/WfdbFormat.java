package dev.isoline.ecg.wfdb;

import dev.isoline.ecg.RecordingException;
import java.nio.ByteBuffer;
import java.util.Arrays;

/** How a WFDB signal file stores samples (signal(5) of the WFDB Applications Guide). */
enum WfdbFormat {

    /** 16-bit two's complement, least significant byte first. */
    FORMAT_16(16, 16) {
        @Override
        void stored(ByteBuffer bytes, int[] into, int from, int count) {
            var words = new short[count];
            bytes.asShortBuffer().get(words);
            for (int i = 0; i < count; i++) {
                into[from + i] = words[i];
            }
        }

        @Override
        long bytes(long samples) {
            return 2 * samples;
        }
    },

    /** Two 12-bit samples in three bytes; the high halves share the middle byte. */
    FORMAT_212(212, 12) {
        @Override
        void stored(ByteBuffer bytes, int[] into, int from, int count) {
            for (int i = 0; i < count; i++) {
                into[from + i] = sample(bytes, i);
            }
        }

        private static int sample(ByteBuffer bytes, int index) {
            int at = index / 2 * 3;
            int shared = bytes.get(at + 1);
            return index % 2 == 0
                    ? signed12((shared & 0x0f) << 8 | bytes.get(at) & 0xff)
                    : signed12((shared & 0xf0) << 4 | bytes.get(at + 2) & 0xff);
        }

        @Override
        long bytes(long samples) {
            return samples / 2 * 3 + samples % 2 * 2;
        }
    };

    private final int number;
    private final int bits;

    WfdbFormat(int number, int bits) {
        this.number = number;
        this.bits = bits;
    }

    /** The first samples of bytes that begin with an even sample, as stored. */
    abstract void stored(ByteBuffer bytes, int[] into, int from, int count);

    /** Bytes that so many samples take. */
    abstract long bytes(long samples);

    /** Samples that fit into so many bytes. */
    long samples(long bytes) {
        return this == FORMAT_16 ? bytes / 2 : bytes / 3 * 2 + bytes % 3 / 2;
    }

    int number() {
        return number;
    }

    int bits() {
        return bits;
    }

    /** The most negative value of a format means that there is no sample. */
    int missing() {
        return -1 << bits - 1;
    }

    private static int signed12(int value) {
        return value << 20 >> 20;
    }

    static WfdbFormat of(int number) throws RecordingException {
        return Arrays.stream(values())
                .filter(format -> format.number == number)
                .findFirst()
                .orElseThrow(
                        () ->
                                new RecordingException(
                                        "The WFDB signal format "
                                                + number
                                                + " is not one of those read here, 16 and 212."));
    }
}
