package dev.isoline.ecg.ishne;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Writes ISHNE Holter 1.0 files at the offsets of the format's table (Badilini 1998). The checksum
 * is computed by dividing the message, bit by bit, as a polynomial.
 */
public final class IshneBytes {

    public String magic = "ISHNE1.0";
    public int hz = 250;
    public int[] specifications = {6, 15};
    public int[] resolutions = {5000, 5000};
    public int samples;
    public int variable = 6;
    public int pacemaker;
    public int spoil;
    private byte[] data = {};

    /** Samples of all leads, one time after the other. */
    public IshneBytes data(int... interleaved) {
        var bytes = ByteBuffer.allocate(2 * interleaved.length).order(ByteOrder.LITTLE_ENDIAN);
        for (int sample : interleaved) {
            bytes.putShort((short) sample);
        }
        data = bytes.array();
        samples = interleaved.length / specifications.length;
        return this;
    }

    public IshneBytes bytes(int... values) {
        data = new byte[values.length];
        for (int i = 0; i < values.length; i++) {
            data[i] = (byte) values[i];
        }
        return this;
    }

    public byte[] file() {
        int end = 522 + variable;
        var b = ByteBuffer.allocate(end + data.length).order(ByteOrder.LITTLE_ENDIAN);
        b.put(0, magic.getBytes(StandardCharsets.US_ASCII));
        b.putInt(10, variable).putInt(14, samples).putInt(18, 522).putInt(22, end);
        b.putShort(26, (short) 1);
        text(b, 28, "Ada").put(68 + 40 - 1, (byte) 0);
        text(b, 68, "Müller");
        text(b, 108, "P-17");
        b.putShort(128, (short) 2);
        triple(b, 132, 2, 5, 1951);
        triple(b, 138, 24, 10, 2026);
        triple(b, 150, 9, 30, 15);
        b.putShort(156, (short) specifications.length);
        for (int i = 0; i < 12; i++) {
            boolean there = i < specifications.length;
            b.putShort(158 + 2 * i, (short) (there ? specifications[i] : -9));
            b.putShort(206 + 2 * i, (short) (there ? resolutions[i] : -9));
        }
        b.putShort(230, (short) pacemaker);
        text(b, 232, "Recorder 7");
        b.putShort(272, (short) hz);
        for (int i = 0; i < variable; i++) {
            b.put(522 + i, (byte) ('a' + i));
        }
        b.putShort(8, (short) (remainder(b.array(), 10, end) ^ spoil));
        b.put(end, data);
        return b.array();
    }

    private static ByteBuffer text(ByteBuffer b, int at, String text) {
        return b.put(at, text.getBytes(StandardCharsets.ISO_8859_1));
    }

    private static void triple(ByteBuffer b, int at, int... values) {
        for (int i = 0; i < 3; i++) {
            b.putShort(at + 2 * i, (short) values[i]);
        }
    }

    /** Of the bits, the first 16 inverted and 16 zeros appended, divided by x^16+x^12+x^5+1. */
    static int remainder(byte[] bytes, int from, int to) {
        var message = Arrays.copyOf(Arrays.copyOfRange(bytes, from, to), to - from + 2);
        message[0] ^= (byte) 0xff;
        message[1] ^= (byte) 0xff;
        int register = 0;
        for (int bit = 0; bit < 8 * message.length; bit++) {
            int next = message[bit / 8] >> 7 - bit % 8 & 1;
            boolean divides = (register & 0x8000) != 0;
            register = (register << 1 | next) & 0xffff;
            register ^= divides ? 0x1021 : 0;
        }
        return register;
    }
}
