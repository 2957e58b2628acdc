package dev.isoline.ecg.rhythm;

import java.io.ByteArrayOutputStream;
import java.util.Random;

/** MIT annotation files (annot(5) of the WFDB Applications Guide) with beats by chance. */
final class MadeAnnotations {

    /** N L R A a J S V E F / Q f j e: many normal beats, ectopic ones often in a row. */
    private static final int[] BEATS = {1, 2, 3, 8, 4, 7, 9, 5, 10, 6, 12, 13, 38, 11, 34};

    private static final int[] OTHERS = {14, 28, 31};
    private static final int FLUTTER_BEGINS = 32;
    private static final int FLUTTER_ENDS = 33;
    private static final int SKIP = 59;
    private static final int LONGEST_STEP = 1023;

    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private final Random random;
    private long at;
    private int code = 1;

    private MadeAnnotations(long seed) {
        random = new Random(seed);
    }

    static byte[] of(long seed, long samples) {
        var made = new MadeAnnotations(seed);
        while (made.at < samples - 3000) {
            made.next();
        }
        made.word(0);
        return made.bytes.toByteArray();
    }

    private void next() {
        int chance = random.nextInt(1000);
        if (chance < 2) {
            annotation(FLUTTER_BEGINS, 200);
            annotation(FLUTTER_ENDS, 900);
        } else if (chance < 12) {
            annotation(OTHERS[random.nextInt(OTHERS.length)], 20);
        }
        if (random.nextInt(3) == 0) {
            code = random.nextInt(4) == 0 ? BEATS[random.nextInt(BEATS.length)] : 1;
        }
        annotation(code, (int) Math.max(90, 290 + 40 * random.nextGaussian()));
        if (chance > 994) {
            annotation(1, 1500);
        }
    }

    private void annotation(int code, int step) {
        at += step;
        if (step > LONGEST_STEP) {
            word(SKIP << 10);
            word(step >>> 16);
            word(step & 0xffff);
            step = 0;
        }
        word(code << 10 | step);
    }

    private void word(int word) {
        bytes.write(word);
        bytes.write(word >>> 8);
    }
}
