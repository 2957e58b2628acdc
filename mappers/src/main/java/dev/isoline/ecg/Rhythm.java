package dev.isoline.ecg;

import java.util.Arrays;
import java.util.Optional;

/**
 * Rhythms of WFDB annotation files, by the text of a rhythm change (code 28, WFDB Applications
 * Guide, "Annotation codes", rhythm annotation strings).
 */
public enum Rhythm {
    // spotless:off
    ATRIAL_BIGEMINY("(AB"),
    ATRIAL_FIBRILLATION("(AFIB"),
    ATRIAL_FLUTTER("(AFL"),
    VENTRICULAR_BIGEMINY("(B"),
    SECOND_DEGREE_BLOCK("(BII"),
    IDIOVENTRICULAR("(IVR"),
    SINUS("(N"),
    JUNCTIONAL("(NOD"),
    PACED("(P"),
    PRE_EXCITATION("(PREX"),
    SINUS_BRADYCARDIA("(SBR"),
    SUPRAVENTRICULAR_TACHYARRHYTHMIA("(SVTA"),
    VENTRICULAR_TRIGEMINY("(T"),
    VENTRICULAR_FLUTTER("(VFL"),
    VENTRICULAR_TACHYCARDIA("(VT");
    // spotless:on

    private final String wfdb;

    Rhythm(String wfdb) {
        this.wfdb = wfdb;
    }

    /** Text of the rhythm change. */
    public String wfdb() {
        return wfdb;
    }

    /** Empty for a text that is no rhythm of the list. */
    public static Optional<Rhythm> ofWfdb(String text) {
        return Arrays.stream(values()).filter(rhythm -> rhythm.wfdb.equals(text)).findFirst();
    }
}
