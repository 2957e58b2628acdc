package dev.isoline.dicom.upper;

import java.io.IOException;

/** Bytes that are no PDU: event 19 of PS3.8 table 9-10. */
final class InvalidPdu extends IOException {

    private static final long serialVersionUID = 1;

    /** Reasons of A-ABORT, PS3.8 table 9-26. */
    static final int UNRECOGNIZED = 1;

    static final int UNEXPECTED = 2;
    static final int INVALID_PARAMETER = 6;

    private final int reason;

    InvalidPdu(int reason, String fault) {
        super(fault);
        this.reason = reason;
    }

    static InvalidPdu parameter(String fault) {
        return new InvalidPdu(INVALID_PARAMETER, fault);
    }

    int reason() {
        return reason;
    }
}
