package dev.isoline.ecg.csv;

import dev.isoline.ecg.Block;
import dev.isoline.ecg.RecordingException;
import java.util.Locale;

/**
 * One row of samples.
 *
 * @param time in seconds; NaN where the rows have none
 * @param samples in units of the resolution, {@link Block#MISSING} for an empty field
 * @param rounded whether a value was no multiple of the resolution
 */
record CsvRow(double time, int[] samples, boolean rounded) {

    private static final double TOLERANCE = 1e-3;

    /**
     * @param line counted from 1, for the error
     */
    static CsvRow parse(String text, CsvHeader header, long line) throws RecordingException {
        int leads = header.names().size();
        var fields = text.split(",", -1);
        int first = header.timed() ? 1 : 0;
        if (fields.length != first + leads) {
            throw new RecordingException(
                    "Line "
                            + line
                            + " of the CSV file has "
                            + fields.length
                            + " fields, "
                            + (first + leads)
                            + " are declared.");
        }
        double time = header.timed() ? number(fields[0].strip(), line) : Double.NaN;
        var samples = new int[leads];
        boolean rounded = false;
        for (int i = 0; i < leads; i++) {
            String field = fields[first + i].strip();
            if (isMissing(field)) {
                samples[i] = Block.MISSING;
            } else {
                double units = number(field, line) / header.resolution();
                samples[i] = sample(units, line);
                rounded |= Math.abs(units - samples[i]) > TOLERANCE;
            }
        }
        return new CsvRow(time, samples, rounded);
    }

    private static boolean isMissing(String field) {
        return field.isEmpty() || field.toLowerCase(Locale.ROOT).equals("nan");
    }

    private static int sample(double units, long line) throws RecordingException {
        double sample = Math.rint(units);
        if (sample <= Short.MIN_VALUE || sample > Short.MAX_VALUE) {
            throw new RecordingException(
                    "Line "
                            + line
                            + " of the CSV file has a value of more than 16 bits in units of the"
                            + " declared resolution.");
        }
        return (int) sample;
    }

    private static double number(String field, long line) throws RecordingException {
        try {
            double value = Double.parseDouble(field);
            if (Double.isFinite(value) && "0123456789.".indexOf(last(field)) >= 0) {
                return value;
            }
        } catch (NumberFormatException e) {
            // the same as a value that is not finite
        }
        throw new RecordingException(
                "Line " + line + " of the CSV file has a field that is no number.");
    }

    /** Java takes {@code 1f} and {@code 1d} for numbers. */
    private static char last(String field) {
        return field.charAt(field.length() - 1);
    }
}
