package dev.isoline.ecg.edf;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Writes EDF files byte by byte from the layout in the EDF+ specification, section 2.1. */
public final class EdfBytes {

    private record Signal(String label, String dimension, String[] calibration, int samples) {}

    public String patient = "MCH-0234567 F 02-MAY-1951 Haagse_Harry";
    public String recording = "Startdate 02-MAR-2002 EMG561 BK/JOP Sony._MNC_R_Mk2";
    public String date = "02.03.02";
    public String reserved = "EDF+C";
    public String records;
    public String recordSeconds = "1";
    public String headerBytes;
    public String prefiltering = "";
    private final List<Signal> signals = new ArrayList<>();
    private final ByteArrayOutputStream data = new ByteArrayOutputStream();
    private int written;
    private int sampleBytes = 2;

    /** A file of samples of 24 bits. */
    public static EdfBytes bdf() {
        var file = new EdfBytes();
        file.sampleBytes = 3;
        return file;
    }

    public EdfBytes signal(String label, String dimension, int samples, String... calibration) {
        var range =
                calibration.length == 4
                        ? calibration
                        : new String[] {"-3000", "3000", "-2048", "2047"};
        signals.add(new Signal(label, dimension, range, samples));
        return this;
    }

    public EdfBytes annotations(int words) {
        return signal(
                (sampleBytes == 2 ? "EDF" : "BDF") + " Annotations",
                "",
                words,
                "-1",
                "1",
                "-32768",
                "32767");
    }

    /** Samples of one signal in the data record. */
    public EdfBytes samples(int... samples) {
        for (int sample : samples) {
            data.write(sample);
            data.write(sample >> 8);
            if (sampleBytes == 3) {
                data.write(sample >> 16);
            }
        }
        return this;
    }

    public EdfBytes text(String text, int words) {
        var bytes = text.getBytes(StandardCharsets.UTF_8);
        data.writeBytes(Arrays.copyOf(bytes, sampleBytes * words));
        return this;
    }

    public EdfBytes endRecord() {
        written++;
        return this;
    }

    public byte[] bytes() {
        var header = new StringBuilder();
        put(header, sampleBytes == 2 ? "0" : "\u00ffBIOSEMI", 8)
                .put(header, patient, 80)
                .put(header, recording, 80);
        put(header, date, 8).put(header, "10.20.30", 8);
        put(header, headerBytes != null ? headerBytes : "" + 256 * (signals.size() + 1), 8);
        put(header, reserved, 44).put(header, records != null ? records : "" + written, 8);
        put(header, recordSeconds, 8).put(header, "" + signals.size(), 4);
        signals.forEach(signal -> put(header, signal.label, 16));
        signals.forEach(signal -> put(header, "", 80));
        signals.forEach(signal -> put(header, signal.dimension, 8));
        for (int i = 0; i < 4; i++) {
            int field = i;
            signals.forEach(signal -> put(header, signal.calibration[field], 8));
        }
        signals.forEach(signal -> put(header, prefiltering, 80));
        signals.forEach(signal -> put(header, "" + signal.samples, 8));
        signals.forEach(signal -> put(header, "", 32));
        var file = new ByteArrayOutputStream();
        file.writeBytes(header.toString().getBytes(StandardCharsets.ISO_8859_1));
        file.writeBytes(data.toByteArray());
        return file.toByteArray();
    }

    private EdfBytes put(StringBuilder header, String text, int width) {
        header.append(text).append(" ".repeat(width - text.length()));
        return this;
    }
}
