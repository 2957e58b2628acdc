package dev.isoline.gateway;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;

/**
 * A small EDF+C file with one lead of 60 beats a minute, from the layout in the EDF+ specification,
 * section 2.1.
 *
 * @param patient the patient field, 80 characters at most
 * @param recording the recording field
 */
record Edf(String patient, String recording) {

    static final int SECONDS = 60;

    private static final int HZ = 200;
    private static final int ANNOTATION_BYTES = 30;

    /** Of the clinic's patient, for its order. */
    static Edf of(Clinic clinic) {
        return new Edf(
                clinic.mrn() + " F 13-JUL-1959 Quillfeather_Ottoline",
                "Startdate 04-NOV-2026 " + clinic.placer() + " X Isoline_test");
    }

    /** A recorder that knows nothing of patient and order. */
    static Edf anonymous(String note) {
        return new Edf("X X X X", "Startdate 04-NOV-2026 X X " + note);
    }

    byte[] bytes() {
        var file = new ByteArrayOutputStream();
        file.writeBytes(header().getBytes(StandardCharsets.US_ASCII));
        for (int second = 0; second < SECONDS; second++) {
            for (int i = 0; i < HZ; i++) {
                int value = sample(i);
                file.write(value);
                file.write(value >> 8);
            }
            file.writeBytes(timekeeping(second));
        }
        return file.toByteArray();
    }

    /** Microvolts: one steep, narrow wave a second and a flat, wide one after it. */
    static int sample(int i) {
        double r = 1200 * Math.exp(-Math.pow((i - 60) / 2.5, 2));
        double t = 200 * Math.exp(-Math.pow((i - 120) / 12.0, 2));
        return (int) Math.round(r + t);
    }

    private static byte[] timekeeping(int second) {
        byte[] text = ("+" + second + "\u0014\u0014\0").getBytes(StandardCharsets.US_ASCII);
        return java.util.Arrays.copyOf(text, ANNOTATION_BYTES);
    }

    private String header() {
        return field("0", 8)
                + field(patient, 80)
                + field(recording, 80)
                + "04.11.2609.00.00"
                + field("" + 256 * 3, 8)
                + field("EDF+C", 44)
                + field("" + SECONDS, 8)
                + field("1", 8)
                + field("2", 4)
                + two("ECG II", "EDF Annotations", 16)
                + two("", "", 80)
                + two("uV", "", 8)
                + two("-32768", "-1", 8)
                + two("32767", "1", 8)
                + two("-32768", "-32768", 8)
                + two("32767", "32767", 8)
                + two("", "", 80)
                + two("" + HZ, "" + ANNOTATION_BYTES / 2, 8)
                + two("", "", 32);
    }

    private static String two(String lead, String annotations, int width) {
        return field(lead, width) + field(annotations, width);
    }

    private static String field(String text, int width) {
        return text + " ".repeat(width - text.length());
    }
}
