package dev.isoline.ecg.wfdb;

import dev.isoline.ecg.RecordingException;
import java.util.Arrays;
import java.util.stream.Collectors;

/** How a WFDB signal file stores samples (signal(5) of the WFDB Applications Guide). */
enum WfdbFormat {
    // spotless:off
    //     number bits, samples in a group of bytes
    /** No file: every sample is missing. */
    NULL  (  0,  16,    1,                  0),
    /** Two's complement, least significant byte first. */
    F16   ( 16,  16,    1,                  2),
    F24   ( 24,  24,    1,                  3),
    F32   ( 32,  32,    1,                  4),
    /** Two's complement, most significant byte first. */
    F61   ( 61,  16,    1,                  2),
    /** Offset binary. */
    F80   ( 80,   8,    1,                  1),
    F160  (160,  16,    1,                  2),
    /** Two samples of 12 bits in three bytes. */
    F212  (212,  12,    2,                  3),
    /** Three samples of 10 bits in two byte pairs, the third in the upper bits of both. */
    F310  (310,  10,    3,                  4),
    /** Three samples of 10 bits in 32, the first in the lowest. */
    F311  (311,  10,    3,                  4);
    // spotless:on

    private final int number;
    private final int bits;
    private final int groupSamples;
    private final int groupBytes;

    WfdbFormat(int number, int bits, int groupSamples, int groupBytes) {
        this.number = number;
        this.bits = bits;
        this.groupSamples = groupSamples;
        this.groupBytes = groupBytes;
    }

    static WfdbFormat of(int number) throws RecordingException {
        return Arrays.stream(values())
                .filter(format -> format.number == number)
                .findFirst()
                .orElseThrow(() -> new RecordingException(notRead(number)));
    }

    private static String notRead(int number) {
        var read =
                Arrays.stream(values())
                        .map(format -> String.valueOf(format.number))
                        .collect(Collectors.joining(", "));
        return "The WFDB signal format " + number + " is not one of those read here, " + read + ".";
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

    /** Samples that are packed together: only after so many does a sample begin with its byte. */
    int groupSamples() {
        return groupSamples;
    }

    /** Bytes of a group. */
    int groupBytes() {
        return groupBytes;
    }

    /** Bytes that so many samples take, the last group cut after its last sample. */
    long bytes(long samples) {
        return samples / groupSamples * groupBytes + begun((int) (samples % groupSamples));
    }

    /** Samples that fit into so many bytes. */
    long samples(long bytes) {
        if (groupBytes == 0) {
            return 0;
        }
        int rest = 0;
        while (rest + 1 < groupSamples && begun(rest + 1) <= bytes % groupBytes) {
            rest++;
        }
        return bytes / groupBytes * groupSamples + rest;
    }

    /** Bytes of a group that ends after so many samples: those their bits reach into. */
    private int begun(int samples) {
        return this == F310 ? 2 * samples : (samples * bits + 7) / 8;
    }
}
