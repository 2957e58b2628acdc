package dev.isoline.dicom;

/** Tags that hold items together, PS3.5 7.5; they are no data elements. */
final class Delimiter {

    static final int ITEM = 0xFFFE_E000;
    static final int ITEM_END = 0xFFFE_E00D;
    static final int SEQUENCE_END = 0xFFFE_E0DD;

    private Delimiter() {}
}
