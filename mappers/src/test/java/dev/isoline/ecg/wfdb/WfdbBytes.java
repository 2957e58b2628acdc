package dev.isoline.ecg.wfdb;

import java.io.ByteArrayOutputStream;

/** Writes samples as signal(5) of the WFDB Applications Guide draws them. */
public final class WfdbBytes {

    private WfdbBytes() {}

    public static byte[] format16(int... samples) {
        var bytes = new ByteArrayOutputStream();
        for (int sample : samples) {
            bytes.write(sample);
            bytes.write(sample >> 8);
        }
        return bytes.toByteArray();
    }

    /** Whole groups of three samples. */
    public static byte[] format310(int... samples) {
        var bytes = new ByteArrayOutputStream();
        for (int i = 0; i + 2 < samples.length; i += 3) {
            int third = samples[i + 2] & 0x3ff;
            int first = (samples[i] & 0x3ff) << 1 | (third & 0x1f) << 11;
            int second = (samples[i + 1] & 0x3ff) << 1 | third >> 5 << 11;
            bytes.writeBytes(format16(first, second));
        }
        return bytes.toByteArray();
    }

    public static byte[] format212(int... samples) {
        var bytes = new ByteArrayOutputStream();
        for (int i = 0; i < samples.length; i += 2) {
            int odd = i + 1 < samples.length ? samples[i + 1] : 0;
            bytes.write(samples[i]);
            bytes.write(samples[i] >> 8 & 0x0f | odd >> 4 & 0xf0);
            if (i + 1 < samples.length) {
                bytes.write(odd);
            }
        }
        return bytes.toByteArray();
    }
}
