package dev.isoline.dicom;

/** Value representations, PS3.5 table 6.2-1, and how their values are laid out. */
public enum Vr {
    // spotless:off
    AE(Kind.ASCII),  AS(Kind.ASCII),  AT(Kind.BINARY, 4), CS(Kind.ASCII), DA(Kind.ASCII), DS(Kind.ASCII),
    DT(Kind.ASCII),  FL(Kind.BINARY, 4), FD(Kind.BINARY, 8), IS(Kind.ASCII), LO(Kind.TEXT), LT(Kind.PARAGRAPH),
    OB(Kind.BULK, 1), OD(Kind.BULK, 8), OF(Kind.BULK, 4), OL(Kind.BULK, 4), OV(Kind.BULK, 8), OW(Kind.BULK, 2),
    PN(Kind.TEXT),   SH(Kind.TEXT),   SL(Kind.BINARY, 4), SQ(Kind.SEQUENCE), SS(Kind.BINARY, 2), ST(Kind.PARAGRAPH),
    SV(Kind.BULK, 8), TM(Kind.ASCII), UC(Kind.TEXT), UI(Kind.ASCII), UL(Kind.BINARY, 4), UN(Kind.BULK, 1),
    UR(Kind.ASCII),  US(Kind.BINARY, 2), UT(Kind.PARAGRAPH), UV(Kind.BULK, 8);
    // spotless:on

    private enum Kind {
        /** Values of the default repertoire. */
        ASCII,
        /** Values in the data set's character set, several parted by a backslash. */
        TEXT,
        /** One value in the data set's character set; a backslash is a character of it. */
        PARAGRAPH,
        BINARY,
        BULK,
        SEQUENCE
    }

    private final Kind kind;
    private final int width;

    Vr(Kind kind) {
        this(kind, 1);
    }

    Vr(Kind kind, int width) {
        this.kind = kind;
        this.width = width;
    }

    /** Bytes of one value; 1 where values are text. */
    public int width() {
        return width;
    }

    /** Two reserved bytes and a 32-bit length in Explicit VR, PS3.5 7.1.2. */
    public boolean hasLongLength() {
        return kind == Kind.BULK || kind == Kind.SEQUENCE || this == UC || this == UR || this == UT;
    }

    public boolean isText() {
        return kind == Kind.ASCII || kind == Kind.TEXT || kind == Kind.PARAGRAPH;
    }

    /** Its text is in Specific Character Set (0008,0005), PS3.5 6.1.2.2. */
    public boolean usesCharacterSet() {
        return kind == Kind.TEXT || kind == Kind.PARAGRAPH;
    }

    /** A backslash parts its values, PS3.5 6.4. */
    boolean partsByBackslash() {
        return kind == Kind.TEXT || kind == Kind.ASCII && this != UR;
    }

    /** What makes an odd length even, PS3.5 6.2: a space in text, NUL in UI and in bytes. */
    byte padding() {
        return (byte) (isText() && this != UI ? ' ' : 0);
    }

    private static final int LETTERS = 26;
    private static final Vr[] BY_LETTERS = new Vr[LETTERS * LETTERS];

    static {
        for (Vr vr : values()) {
            BY_LETTERS[(vr.name().charAt(0) - 'A') * LETTERS + vr.name().charAt(1) - 'A'] = vr;
        }
    }

    /** The VR of two letters, or null where they are none. */
    static Vr of(int first, int second) {
        boolean letters = first >= 'A' && first <= 'Z' && second >= 'A' && second <= 'Z';
        return letters ? BY_LETTERS[(first - 'A') * LETTERS + second - 'A'] : null;
    }
}
