package dev.isoline.ecg.format;

import dev.isoline.ecg.csv.CsvRecording;
import dev.isoline.ecg.dicom.DicomRecording;
import dev.isoline.ecg.edf.EdfRecording;
import dev.isoline.ecg.ishne.IshneRecording;
import dev.isoline.ecg.wfdb.WfdbRecording;

/** What a file is by its first bytes; those up to {@link #WFDB} are recordings. */
enum Kind {
    DICOM,
    EDF,
    ISHNE,
    CSV,
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
        if (EdfRecording.begins(start)) {
            return EDF;
        }
        return IshneRecording.begins(start) ? ISHNE : text(start);
    }

    private static Kind text(byte[] start) {
        for (byte b : start) {
            if (b >= 0 && b < ' ' && b != '\t' && b != '\n' && b != '\r') {
                return OTHER;
            }
        }
        if (CsvRecording.begins(start)) {
            return CSV;
        }
        return WfdbRecording.begins(start) ? WFDB : TEXT;
    }

    /** Why a file of this kind alone is no recording. */
    String refusal() {
        return switch (this) {
            case EMPTY -> "The file is empty.";
            case TEXT ->
                    "The file is a text, not a recording: it begins neither as a WFDB header nor as"
                            + " CSV that declares a sampling frequency.";
            default ->
                    "The file begins neither as EDF, BDF, ISHNE or DICOM nor as a WFDB header or"
                            + " CSV.";
        };
    }
}
