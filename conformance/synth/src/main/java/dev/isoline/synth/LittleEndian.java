package dev.isoline.synth;

import java.io.IOException;
import java.io.OutputStream;

/** Writes 16-bit words, low byte first. */
final class LittleEndian {

    private LittleEndian() {}

    static void word(OutputStream out, int value) throws IOException {
        out.write(value);
        out.write(value >> 8);
    }
}
