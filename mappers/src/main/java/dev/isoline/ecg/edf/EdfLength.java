package dev.isoline.ecg.edf;

import dev.isoline.ecg.Faults;
import dev.isoline.ecg.RecordingException;

/** How many data records an EDF file holds, by its header and by its size. */
final class EdfLength {

    private static final double FASTEST_HZ = 100_000;

    private final EdfHeader edf;
    private final long size;

    EdfLength(EdfHeader edf, long size) {
        this.edf = edf;
        this.size = size;
    }

    /** A file that ends early is a fault; bytes after the last data record become a note. */
    long records(Faults faults) throws RecordingException {
        checkRate();
        long fit = (size - edf.bytes()) / edf.recordBytes();
        if (fit <= 0 && edf.records() < 1) {
            throw new RecordingException("The EDF file holds no samples.");
        }
        long records = edf.records() < 0 ? fit : edf.records();
        if (records == 0) {
            throw new RecordingException("The EDF header announces no data records.");
        }
        if (records > fit) {
            faults.found(missing(edf.bytes() + records * edf.recordBytes(), size));
            return readable(fit, faults);
        }
        if (size != edf.bytes() + records * edf.recordBytes()) {
            faults.note("The EDF file goes on after its last data record; the rest was left out.");
        }
        return records;
    }

    /** What is left of a file that ends early. */
    private long readable(long fit, Faults faults) throws RecordingException {
        if (fit == 0) {
            throw new RecordingException("The EDF file holds no whole data record.");
        }
        faults.note(fit + " of " + edf.records() + " data records were read.");
        return fit;
    }

    private void checkRate() throws RecordingException {
        if (edf.recordSeconds().signum() == 0) {
            throw new RecordingException("The EDF header gives no duration of a data record.");
        }
        for (var signal : edf.signals()) {
            double hz = signal.samples() / edf.recordSeconds().doubleValue();
            if (!edf.isAnnotations(signal) && !(hz <= FASTEST_HZ && hz > 0)) {
                throw new RecordingException(
                        "The EDF header gives a sampling frequency no ECG is recorded with.");
            }
        }
    }

    static RecordingException shortHeader(long missing) {
        return new RecordingException(
                "The EDF file is truncated within its header: " + missing + " bytes are missing.");
    }

    static String missing(long announced, long present) {
        return "The EDF file is truncated: its header announces "
                + announced
                + " bytes, "
                + (announced - present)
                + " of them are missing.";
    }
}
