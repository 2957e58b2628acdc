package dev.isoline.ecg.edf;

import java.util.Arrays;
import java.util.Optional;

/**
 * The two forms of the format, by the first eight bytes of the file: EDF with samples of 16 bits,
 * BDF with samples of 24 bits and otherwise the same header ("BDF file format", BioSemi).
 */
enum EdfVersion {
    EDF(new byte[] {'0', ' ', ' ', ' ', ' ', ' ', ' ', ' '}, 2),
    BDF(new byte[] {(byte) 0xff, 'B', 'I', 'O', 'S', 'E', 'M', 'I'}, 3);

    static final int BYTES = 8;

    private final byte[] magic;
    private final int sampleBytes;

    EdfVersion(byte[] magic, int sampleBytes) {
        this.magic = magic;
        this.sampleBytes = sampleBytes;
    }

    /** Of a file that begins so; empty when it is neither. */
    static Optional<EdfVersion> of(byte[] start) {
        return start.length < BYTES
                ? Optional.empty()
                : Arrays.stream(values())
                        .filter(v -> Arrays.equals(start, 0, BYTES, v.magic, 0, BYTES))
                        .findFirst();
    }

    int sampleBytes() {
        return sampleBytes;
    }

    /** Label of the signals that hold annotations. */
    String annotations() {
        return name() + " Annotations";
    }

    /** Begins the reserved field of EDF+ and BDF+. */
    String plus() {
        return name() + "+";
    }
}
