package dev.isoline.ecg.edf;

import dev.isoline.ecg.RecordingException;
import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Time-stamped Annotations Lists of one EDF+ data record (EDF+ specification, 2.2.2): {@code
 * onset[0x15 duration]0x14 text 0x14 ... 0x14 0x00}.
 */
final class TimestampedAnnotations {

    /**
     * One list.
     *
     * @param onset seconds from the start in the header, exact
     * @param duration seconds; 0 where the list gives none
     * @param texts in UTF-8; the first list of a data record has an empty first text
     */
    record Tal(BigDecimal onset, BigDecimal duration, List<String> texts) {}

    private static final Pattern ONSET = Pattern.compile("[+-]\\d{1,12}(?:\\.\\d{0,18})?");

    private static final Pattern DURATION = Pattern.compile("\\d{1,12}(?:\\.\\d{0,18})?");

    private TimestampedAnnotations() {}

    /** Onset of the first list in the bytes of an annotation signal; empty where there is none. */
    static Optional<BigDecimal> onset(ByteBuffer bytes) throws RecordingException {
        int end = 0;
        while (end < bytes.limit() && bytes.get(end) > 0x15) {
            end++;
        }
        var onset = StandardCharsets.US_ASCII.decode(bytes.slice(0, end)).toString();
        return end > 0 && ONSET.matcher(onset).matches()
                ? Optional.of(new BigDecimal(onset))
                : Optional.empty();
    }

    /** The lists in the bytes of an annotation signal. */
    static List<Tal> read(ByteBuffer bytes) throws RecordingException {
        var text = StandardCharsets.UTF_8.decode(bytes).toString();
        var lists = new ArrayList<Tal>();
        for (String list : text.split("\0")) {
            if (!list.isEmpty()) {
                lists.add(list(list));
            }
        }
        return lists;
    }

    private static Tal list(String list) throws RecordingException {
        var parts = List.of(list.split("\u0014", -1));
        var times = parts.get(0).split("\u0015");
        var onset = times[0];
        if (parts.size() < 2 || !ONSET.matcher(onset).matches()) {
            throw new RecordingException(
                    "An annotation of the EDF+ file does not begin with a time.");
        }
        boolean lasts = times.length > 1 && DURATION.matcher(times[1]).matches();
        return new Tal(
                new BigDecimal(onset),
                lasts ? new BigDecimal(times[1]) : BigDecimal.ZERO,
                parts.subList(1, Math.max(2, parts.size() - 1)));
    }
}
