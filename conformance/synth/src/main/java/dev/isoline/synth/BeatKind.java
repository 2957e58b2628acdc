package dev.isoline.synth;

/** Origin of a beat with its WFDB annotation code (WFDB annot(5), ecgcodes.h). */
public enum BeatKind {
    NORMAL(1),
    VENTRICULAR(5),
    SUPRAVENTRICULAR(8);

    private final int wfdbCode;

    BeatKind(int wfdbCode) {
        this.wfdbCode = wfdbCode;
    }

    /** 1 = N, 5 = V, 8 = A. */
    public int wfdbCode() {
        return wfdbCode;
    }
}
