package dev.isoline.ecg.edf;

import dev.isoline.ecg.RecordingException;
import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * The header of an EDF or EDF+ file, field by field in the order of the file (EDF+ specification,
 * section 2.1).
 *
 * @param patient local patient identification
 * @param recording local recording identification
 * @param startDate {@code dd.mm.yy}
 * @param startTime {@code hh.mm.ss}
 * @param reserved begins {@code EDF+C} or {@code EDF+D} in EDF+
 * @param records number of data records, -1 when unknown
 * @param recordSeconds duration of one
 */
record EdfHeader(
        String patient,
        String recording,
        String startDate,
        String startTime,
        int bytes,
        String reserved,
        long records,
        BigDecimal recordSeconds,
        List<EdfSignal> signals) {

    /** Bytes before the descriptions of the signals, and bytes of each description. */
    static final int PART = 256;

    static final byte[] MAGIC = "0       ".getBytes(StandardCharsets.US_ASCII);

    /** EDF+ asks for 61,440 at most; recorders write more, but nobody needs this much. */
    private static final long LARGEST_RECORD = 16 << 20;

    static int signalCount(ByteBuffer fixed) throws RecordingException {
        long count = new EdfFields(fixed).at(252).number(4, "number of signals");
        if (count < 1) {
            throw new RecordingException("The EDF header announces no signals.");
        }
        return (int) count;
    }

    /** Reads the whole header; the buffer holds {@code PART x (signals + 1)} bytes. */
    static EdfHeader read(ByteBuffer whole) throws RecordingException {
        int count = signalCount(whole);
        var fields = new EdfFields(whole).at(8);
        var header =
                new EdfHeader(
                        fields.text(80),
                        fields.text(80),
                        fields.text(8),
                        fields.text(8),
                        (int) fields.number(8, "number of bytes in header"),
                        fields.text(44),
                        fields.number(8, "number of data records"),
                        fields.decimal(8, "duration of a data record"),
                        signals(new EdfFields(whole).at(PART), count));
        header.check();
        return header;
    }

    private static List<EdfSignal> signals(EdfFields fields, int count) throws RecordingException {
        var labels = fields.texts(16, count);
        fields.texts(80, count); // transducer type
        var dimensions = fields.texts(8, count);
        var physicalMinimum = fields.texts(8, count);
        var physicalMaximum = fields.texts(8, count);
        var digitalMinimum = fields.texts(8, count);
        var digitalMaximum = fields.texts(8, count);
        var prefiltering = fields.texts(80, count);
        var samples = fields.texts(8, count);
        var signals = new ArrayList<EdfSignal>(count);
        long offset = 0;
        for (int i = 0; i < count; i++) {
            String signal = " of signal " + (i + 1);
            long perRecord = EdfFields.number(samples.get(i), "number of samples" + signal);
            checkRecord(perRecord, offset + perRecord, signal);
            signals.add(
                    new EdfSignal(
                            labels.get(i),
                            dimensions.get(i),
                            EdfFields.real(physicalMinimum.get(i), "physical minimum" + signal),
                            EdfFields.real(physicalMaximum.get(i), "physical maximum" + signal),
                            EdfFields.word(digitalMinimum.get(i), "digital minimum" + signal),
                            EdfFields.word(digitalMaximum.get(i), "digital maximum" + signal),
                            prefiltering.get(i),
                            (int) perRecord,
                            (int) offset));
            offset += perRecord;
        }
        return List.copyOf(signals);
    }

    private static void checkRecord(long samples, long total, String signal)
            throws RecordingException {
        if (samples < 0) {
            throw new RecordingException(
                    "The EDF header gives a negative number of samples" + signal + ".");
        }
        if (total * 2 > LARGEST_RECORD) {
            throw new RecordingException(
                    "The EDF header announces data records of more than 16 MiB.");
        }
    }

    private void check() throws RecordingException {
        if (bytes != PART * (signals.size() + 1)) {
            throw new RecordingException(
                    "The EDF header gives its own length as "
                            + bytes
                            + " bytes, but describes "
                            + signals.size()
                            + " signals.");
        }
        if (records < -1) {
            throw new RecordingException("The EDF header gives a negative number of data records.");
        }
        if (recordSeconds.signum() < 0) {
            throw new RecordingException(
                    "The EDF header gives a negative duration of a data record.");
        }
    }

    boolean isPlus() {
        return reserved.startsWith("EDF+");
    }

    boolean isDiscontinuous() {
        return reserved.startsWith("EDF+D");
    }

    String format() {
        return isPlus() ? reserved.substring(0, Math.min(5, reserved.length())) : "EDF";
    }

    int recordBytes() {
        return signals.stream().mapToInt(signal -> 2 * signal.samples()).sum();
    }
}
