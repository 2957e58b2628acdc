package dev.isoline.dicom.dimse;

/** Command Field (0000,0100), PS3.7 E.1, of the messages used here. */
final class Field {

    static final int C_STORE = 0x0001;
    static final int C_FIND = 0x0020;
    static final int C_ECHO = 0x0030;
    static final int N_EVENT_REPORT = 0x0100;
    static final int N_ACTION = 0x0130;
    static final int C_CANCEL = 0x0FFF;

    /** Set in a response. */
    static final int RESPONSE = 0x8000;

    private Field() {}
}
