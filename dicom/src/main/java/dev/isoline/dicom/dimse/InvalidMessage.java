package dev.isoline.dicom.dimse;

import java.io.IOException;

/** What arrived is no DIMSE message; the association is aborted. */
final class InvalidMessage extends IOException {

    private static final long serialVersionUID = 1;

    InvalidMessage(String fault) {
        super(fault);
    }
}
