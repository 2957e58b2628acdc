package dev.isoline.ecg.format;

import dev.isoline.ecg.dicom.DicomRecording;
import dev.isoline.ecg.edf.EdfRecording;
import dev.isoline.ecg.wfdb.WfdbRecording;

/** What a file is by its first bytes; those up to {@link #WFDB} are recordings. */
enum Kind {
    DICOM,
    EDF,
    WFDB,
    EMPTY,
    TEXT,
    OTHER;

    static Kind of(byte[] start) {
        if (start.length == 0) {
            return EMPTY;
        }
        if (DicomRecording.begins(start)) {
            return DICOM;
        }
        return EdfRecording.begins(start) ? EDF : text(start);
    }

    private static Kind text(byte[] start) {
        for (byte b : start) {
            if (b >= 0 && b < ' ' && b != '\t' && b != '\n' && b != '\r') {
                return OTHER;
            }
        }
        return WfdbRecording.begins(start) ? WFDB : TEXT;
    }

    /** Why a file of this kind alone is no recording. */
    String refusal() {
        return switch (this) {
            case EMPTY -> "The file is empty.";
            case TEXT ->
                    "The file is a text, not a recording: it begins neither as an EDF file nor as a"
                            + " WFDB header.";
            default -> "The file begins neither as an EDF file nor as a WFDB header.";
        };
    }
}
