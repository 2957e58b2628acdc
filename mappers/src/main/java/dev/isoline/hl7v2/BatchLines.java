package dev.isoline.hl7v2;

import dev.isoline.order.Problem;
import dev.isoline.order.Problem.Kind;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;

/**
 * Goes through a frame line by line, in bytes: each message may have a character set of its own.
 */
final class BatchLines {

    private static final Set<String> ENVELOPE = Set.of("FHS", "BHS", "BTS", "FTS");

    private final byte[] frame;
    private final List<byte[]> messages = new ArrayList<>();
    private final List<Problem> warnings = new ArrayList<>();
    private MessageHeader header = MessageHeader.unreadable();
    private boolean enveloped;
    private int messageStart = -1;

    BatchLines(byte[] frame) {
        this.frame = frame;
    }

    Batch batch() {
        int at = 0;
        while (at < frame.length) {
            int end = lineEnd(at);
            line(at, end);
            at = end;
        }
        closeMessage(frame.length);
        return new Batch(header, enveloped, List.copyOf(messages), List.copyOf(warnings));
    }

    private void line(int start, int end) {
        String name = name(start, end);
        if (ENVELOPE.contains(name)) {
            closeMessage(start);
            envelope(name, start, end);
        } else if (name.equals("MSH")) {
            closeMessage(start);
            messageStart = start;
        } else if (messageStart < 0 && !name.isBlank()) {
            messageStart = start;
        }
    }

    private void envelope(String name, int start, int end) {
        byte[] line = Arrays.copyOfRange(frame, start, end);
        enveloped |= name.equals("BHS") || name.equals("FHS");
        if (name.equals("BHS")) {
            header = HeaderLine.read(line, "BHS");
        } else if (name.equals("BTS")) {
            checkCount(new String(line, StandardCharsets.ISO_8859_1).strip());
        }
    }

    /** BTS-1, batch message count; often wrong or left out, so it only warns. */
    private void checkCount(String bts) {
        char separator = bts.length() > 3 ? bts.charAt(3) : header.delimiters().field();
        int end = bts.indexOf(separator, 4);
        String count = bts.length() < 5 ? "" : bts.substring(4, end < 0 ? bts.length() : end);
        if (!count.isEmpty() && !count.equals(String.valueOf(messages.size()))) {
            warnings.add(
                    Problem.warning(
                            Kind.VALUE,
                            "BTS-1",
                            "BTS-1 does not match the "
                                    + messages.size()
                                    + " messages of the batch."));
        }
    }

    private void closeMessage(int end) {
        if (messageStart >= 0) {
            messages.add(Arrays.copyOfRange(frame, messageStart, end));
            messageStart = -1;
        }
    }

    /** First three characters of a line without byte order mark; blank for a blank line. */
    private String name(int start, int end) {
        byte[] line = Arrays.copyOfRange(frame, start, Math.min(end, start + 7));
        int from = HeaderLine.start(line);
        String text = new String(line, from, line.length - from, StandardCharsets.ISO_8859_1);
        return text.length() > 3 && Character.isLetterOrDigit(text.charAt(3))
                ? "text"
                : text.substring(0, Math.min(3, text.length()));
    }

    private int lineEnd(int start) {
        int end = start;
        while (end < frame.length && !HeaderLine.isLineEnd(frame[end])) {
            end++;
        }
        while (end < frame.length && HeaderLine.isLineEnd(frame[end])) {
            end++;
        }
        return end;
    }
}
