package dev.isoline.ecg.wfdb;

import dev.isoline.ecg.RecordingException;
import java.util.regex.Pattern;

/**
 * One segment specification line of a WFDB header (header(5)): {@code record samples}.
 *
 * @param record name of the record; {@code ~} for a stretch nothing was recorded in
 * @param frames its length; 0 for the layout segment of a variable-layout record
 */
record WfdbSegment(String record, long frames) {

    private static final Pattern LINE = Pattern.compile("(\\S+)\\s+(\\d{1,12})(?:\\s.*)?");
    private static final String NULL = "~";

    /**
     * @param number counted from 1, for the error
     */
    static WfdbSegment parse(String line, int number) throws RecordingException {
        var matcher = LINE.matcher(line);
        if (!matcher.matches()) {
            throw new RecordingException(
                    "Line " + number + " of the segments in the WFDB header cannot be read.");
        }
        return new WfdbSegment(matcher.group(1), Long.parseLong(matcher.group(2)));
    }

    boolean isNull() {
        return record.equals(NULL);
    }

    String headerFile() {
        return record + ".hea";
    }
}
