package dev.isoline.ecg.ishne;

import java.nio.ByteBuffer;

/** CRC-CCITT: polynomial 0x1021, begun with 0xFFFF, the highest bit first. */
final class Crc {

    static final int START = 0xffff;
    private static final int POLYNOMIAL = 0x1021;

    private Crc() {}

    static int of(int start, ByteBuffer... parts) {
        int crc = start;
        for (ByteBuffer part : parts) {
            for (int i = 0; i < part.limit(); i++) {
                crc = next(crc, part.get(i));
            }
        }
        return crc;
    }

    private static int next(int before, byte value) {
        int crc = before ^ (value & 0xff) << 8;
        for (int bit = 0; bit < 8; bit++) {
            crc = (crc & 0x8000) != 0 ? crc << 1 ^ POLYNOMIAL : crc << 1;
        }
        return crc & 0xffff;
    }
}
