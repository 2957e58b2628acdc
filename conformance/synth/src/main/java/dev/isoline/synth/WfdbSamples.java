package dev.isoline.synth;

import java.io.IOException;
import java.io.OutputStream;

/** How WFDB writes one sample after the other, leads interleaved (WFDB signal(5)). */
public enum WfdbSamples {
    /** Two 12-bit samples in three bytes. */
    FORMAT_212(212, 12) {
        @Override
        void pair(OutputStream out, int first, int second) throws IOException {
            out.write(first);
            out.write(first >> 8 & 0x0F | second >> 4 & 0xF0);
            out.write(second);
        }
    },
    /** 16-bit two's complement, low byte first. */
    FORMAT_16(16, 16) {
        @Override
        void pair(OutputStream out, int first, int second) throws IOException {
            LittleEndian.word(out, first);
            LittleEndian.word(out, second);
        }
    };

    private final int code;
    private final int bits;

    WfdbSamples(int code, int bits) {
        this.code = code;
        this.bits = bits;
    }

    abstract void pair(OutputStream out, int first, int second) throws IOException;

    int code() {
        return code;
    }

    int bits() {
        return bits;
    }
}
