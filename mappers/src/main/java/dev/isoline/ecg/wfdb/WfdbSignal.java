package dev.isoline.ecg.wfdb;

import dev.isoline.ecg.Lead;
import dev.isoline.ecg.Microvolts;
import dev.isoline.ecg.RecordingException;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One signal specification line of a WFDB header (header(5)): {@code file
 * format[xspf][:skew][+offset] [gain[(baseline)][/units] [resolution [zero [initial [checksum
 * [blocksize [description]]]]]]]}.
 *
 * @param file name of the signal file, shared by the signals interleaved in it
 * @param perFrame samples of this signal in a frame
 * @param skew frames by which this signal lags in the file
 * @param offset bytes before the first sample of the file
 * @param gain units of the sample per physical unit; 0 when uncalibrated
 * @param baseline sample value of 0 physical units
 * @param checksum 16-bit sum of all samples; empty when the line does not reach it
 */
record WfdbSignal(
        String file,
        WfdbFormat format,
        int perFrame,
        int skew,
        long offset,
        double gain,
        int baseline,
        String units,
        int resolution,
        OptionalInt checksum,
        String description) {

    private static final Pattern LINE =
            Pattern.compile(
                    "(\\S+)\\s+(\\d{1,4})(?:x(\\d{1,5}))?(?::(\\d{1,5}))?(?:\\+(\\d{1,9}))?(?:\\s+(.*))?");
    private static final Pattern GAIN =
            Pattern.compile(
                    "([-+]?[\\d.]+(?:[eE][-+]?\\d{1,3})?)(?:\\((-?\\d{1,9})\\))?(?:/(\\S+))?");
    private static final int LARGEST_SKEW = 16_384;
    private static final int LARGEST_FRAME = 1_000;

    /**
     * @param number counted from 1, for the error
     */
    static WfdbSignal parse(String line, int number) throws RecordingException {
        var matcher = LINE.matcher(line.strip());
        if (!matcher.matches()) {
            throw unreadable(number);
        }
        int perFrame = count(matcher.group(3), 1);
        int skew = count(matcher.group(4), 0);
        if (perFrame < 1 || perFrame > LARGEST_FRAME || skew > LARGEST_SKEW) {
            throw unreadable(number);
        }
        var optional = new Optional(matcher.group(6), number);
        return new WfdbSignal(
                matcher.group(1),
                WfdbFormat.of(Integer.parseInt(matcher.group(2))),
                perFrame,
                skew,
                count(matcher.group(5), 0),
                optional.gain(),
                optional.baseline(),
                optional.units(),
                optional.number(1, 0),
                optional.checksum(),
                optional.description());
    }

    /** The fields a line may end before; what is not there has the default of header(5). */
    private static final class Optional {

        private final String[] fields;
        private final Matcher gain;
        private final int signal;

        Optional(String rest, int signal) throws RecordingException {
            this.fields = rest == null ? new String[0] : rest.split("\\s+", 7);
            this.gain = GAIN.matcher(fields.length > 0 ? fields[0] : "0");
            this.signal = signal;
            if (!gain.matches()) {
                throw unreadable(signal);
            }
        }

        double gain() throws RecordingException {
            try {
                return Double.parseDouble(gain.group(1));
            } catch (NumberFormatException e) {
                throw unreadable(signal);
            }
        }

        int baseline() throws RecordingException {
            return gain.group(2) != null ? Integer.parseInt(gain.group(2)) : number(2, 0);
        }

        String units() {
            return gain.group(3) != null ? gain.group(3) : "mV";
        }

        OptionalInt checksum() throws RecordingException {
            return fields.length > 4 ? OptionalInt.of(number(4, 0)) : OptionalInt.empty();
        }

        String description() {
            return fields.length > 6 ? fields[6].strip() : "";
        }

        int number(int field, int otherwise) throws RecordingException {
            try {
                return fields.length > field ? Integer.parseInt(fields[field]) : otherwise;
            } catch (NumberFormatException e) {
                throw unreadable(signal);
            }
        }
    }

    private static int count(String digits, int otherwise) {
        return digits == null ? otherwise : Integer.parseInt(digits);
    }

    private static RecordingException unreadable(int number) {
        return new RecordingException(
                "Line " + number + " of the signals in the WFDB header cannot be read.");
    }

    /** Whether it has no signal file. */
    boolean isNull() {
        return format == WfdbFormat.NULL;
    }

    boolean isVoltage() {
        return Microvolts.per(units).isPresent();
    }

    /** A gain of 0 says that the signal is not calibrated. */
    Lead lead(int number) {
        double unit = gain == 0 ? 0 : Microvolts.per(units).orElse(0) / gain;
        return new Lead(
                description.isEmpty() ? "signal " + number : description,
                unit,
                unit == 0 ? 0 : -baseline * unit,
                resolution > 0 && resolution <= format.bits() ? resolution : format.bits());
    }
}
