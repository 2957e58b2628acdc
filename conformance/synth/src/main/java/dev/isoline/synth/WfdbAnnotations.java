package dev.isoline.synth;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;

/** Writes beat labels in the MIT format (WFDB annot(5)): {@code NAME.atr}. */
public final class WfdbAnnotations {

    private static final int SKIP = 59;
    private static final int LARGEST_STEP = 1023;

    private WfdbAnnotations() {}

    public static void write(List<TrueBeat> beats, OutputStream out) throws IOException {
        long last = 0;
        for (TrueBeat beat : beats) {
            int step = Math.toIntExact(beat.sample() - last);
            if (step > LARGEST_STEP) {
                skip(out, step);
                step = 0;
            }
            LittleEndian.word(out, beat.kind().wfdbCode() << 10 | step);
            last = beat.sample();
        }
        LittleEndian.word(out, 0);
    }

    /** The long step follows as 32 bits, the high word first. */
    private static void skip(OutputStream out, int step) throws IOException {
        LittleEndian.word(out, SKIP << 10);
        LittleEndian.word(out, step >> 16);
        LittleEndian.word(out, step);
    }
}
