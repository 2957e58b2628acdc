package dev.isoline.mllp;

import java.util.Arrays;

/** The block characters of MLLP release 1 (HL7 v2.5.1 implementation guide, appendix C). */
final class Block {

    /** VT, the start block character. */
    static final byte START = 0x0B;

    /** FS, the end block character; CR follows it. */
    static final byte END = 0x1C;

    static final byte CARRIAGE_RETURN = 0x0D;

    private Block() {}

    static byte[] frame(byte[] message) {
        byte[] frame = Arrays.copyOf(new byte[] {START}, message.length + 3);
        System.arraycopy(message, 0, frame, 1, message.length);
        frame[message.length + 1] = END;
        frame[message.length + 2] = CARRIAGE_RETURN;
        return frame;
    }
}
