package dev.isoline.ecg.edf;

import dev.isoline.ecg.RecordingException;
import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;

/**
 * The header of an EDF, EDF+, BDF or BDF+ file, field by field in the order of the file (EDF+
 * specification, section 2.1).
 *
 * @param version EDF or BDF
 * @param patient local patient identification
 * @param recording local recording identification
 * @param startDate {@code dd.mm.yy}
 * @param startTime {@code hh.mm.ss}
 * @param reserved begins {@code EDF+C} or {@code EDF+D} in EDF+, {@code BDF+C} or {@code BDF+D} in
 *     BDF+
 * @param records number of data records, -1 when unknown
 * @param recordSeconds duration of one
 */
record EdfHeader(
        EdfVersion version,
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
        var version = version(whole);
        var fields = new EdfFields(whole).at(8);
        var header =
                new EdfHeader(
                        version,
                        fields.text(80),
                        fields.text(80),
                        fields.text(8),
                        fields.text(8),
                        (int) fields.number(8, "number of bytes in header"),
                        fields.text(44),
                        fields.number(8, "number of data records"),
                        fields.decimal(8, "duration of a data record"),
                        signals(new EdfFields(whole).at(PART), count, version));
        header.check();
        return header;
    }

    private static EdfVersion version(ByteBuffer whole) throws RecordingException {
        var start = new byte[EdfVersion.BYTES];
        whole.get(0, start);
        return EdfVersion.of(start)
                .orElseThrow(
                        () -> new RecordingException("The file begins neither as EDF nor as BDF."));
    }

    private static List<EdfSignal> signals(EdfFields fields, int count, EdfVersion version)
            throws RecordingException {
        int bits = 8 * version.sampleBytes();
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
            checkRecord(perRecord, (offset + perRecord) * version.sampleBytes(), signal);
            signals.add(
                    new EdfSignal(
                            labels.get(i),
                            dimensions.get(i),
                            EdfFields.real(physicalMinimum.get(i), "physical minimum" + signal),
                            EdfFields.real(physicalMaximum.get(i), "physical maximum" + signal),
                            EdfFields.digital(
                                    digitalMinimum.get(i), "digital minimum" + signal, bits),
                            EdfFields.digital(
                                    digitalMaximum.get(i), "digital maximum" + signal, bits),
                            prefiltering.get(i),
                            (int) perRecord,
                            (int) offset));
            offset += perRecord;
        }
        return List.copyOf(signals);
    }

    private static void checkRecord(long samples, long bytes, String signal)
            throws RecordingException {
        if (samples < 0) {
            throw new RecordingException(
                    "The EDF header gives a negative number of samples" + signal + ".");
        }
        if (bytes > LARGEST_RECORD) {
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
        for (EdfSignal signal : signals) {
            if (!isAnnotations(signal) && signal.digitalMaximum() <= signal.digitalMinimum()) {
                throw new RecordingException(
                        "The EDF header gives signal "
                                + (signals.indexOf(signal) + 1)
                                + " no digital range.");
            }
        }
        if (recordSeconds.signum() < 0) {
            throw new RecordingException(
                    "The EDF header gives a negative duration of a data record.");
        }
    }

    boolean isPlus() {
        return reserved.startsWith(version.plus());
    }

    boolean isDiscontinuous() {
        return reserved.startsWith(version.plus() + "D");
    }

    /** Whether the signal holds annotations, not samples. */
    boolean isAnnotations(EdfSignal signal) {
        return signal.label().equals(version.annotations());
    }

    String format() {
        return isPlus() ? reserved.substring(0, Math.min(5, reserved.length())) : version.name();
    }

    int recordBytes() {
        return signals.stream().mapToInt(EdfSignal::samples).sum() * version.sampleBytes();
    }
}
