package dev.isoline.ecg.edf;

import dev.isoline.ecg.RecordingException;
import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** The fixed-width text fields of an EDF header; an error names the field as EDF does. */
final class EdfFields {

    private final ByteBuffer header;
    private int at;

    EdfFields(ByteBuffer header) {
        this.header = header;
    }

    EdfFields at(int position) {
        at = position;
        return this;
    }

    String text(int width) {
        var bytes = new byte[width];
        header.get(at, bytes);
        at += width;
        return new String(bytes, StandardCharsets.ISO_8859_1).replace('\0', ' ').strip();
    }

    List<String> texts(int width, int count) {
        var texts = new ArrayList<String>(count);
        for (int i = 0; i < count; i++) {
            texts.add(text(width));
        }
        return texts;
    }

    long number(int width, String field) throws RecordingException {
        return number(text(width), field);
    }

    BigDecimal decimal(int width, String field) throws RecordingException {
        return decimal(text(width), field);
    }

    static long number(String text, String field) throws RecordingException {
        try {
            return Long.parseLong(text);
        } catch (NumberFormatException e) {
            throw notANumber(field);
        }
    }

    /** A digital value: it has to fit into the bits of a sample. */
    static int digital(String text, String field, int bits) throws RecordingException {
        long value = number(text, field);
        long most = (1L << bits - 1) - 1;
        if (value > most || value < -most - 1) {
            throw new RecordingException(
                    "The EDF header field \""
                            + field
                            + "\" is outside "
                            + (-most - 1)
                            + " to "
                            + most
                            + ".");
        }
        return (int) value;
    }

    static double real(String text, String field) throws RecordingException {
        double value = decimal(text, field).doubleValue();
        if (!Double.isFinite(value)) {
            throw notANumber(field);
        }
        return value;
    }

    static BigDecimal decimal(String text, String field) throws RecordingException {
        try {
            return new BigDecimal(text);
        } catch (NumberFormatException e) {
            throw notANumber(field);
        }
    }

    private static RecordingException notANumber(String field) {
        return new RecordingException("The EDF header field \"" + field + "\" is not a number.");
    }
}
