package dev.isoline.ecg.csv;

import dev.isoline.ecg.RecordingException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.ReadableByteChannel;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** The lines of a text in UTF-8, ended by LF or CRLF, one after the other. */
final class CsvLines {

    private static final int LONGEST = 1 << 16;
    private static final String BYTE_ORDER_MARK = "\ufeff";

    private final ReadableByteChannel channel;
    private final ByteBuffer buffer = ByteBuffer.allocate(LONGEST);
    private byte[] line = new byte[256];
    private long number;
    private boolean ended = true;

    CsvLines(ReadableByteChannel channel) {
        this.channel = channel;
        buffer.limit(0);
    }

    /** The next line without its end; null behind the last. */
    String next() throws IOException {
        int length = 0;
        ended = false;
        while (!ended && (buffer.hasRemaining() || readOn())) {
            byte b = buffer.get();
            if (b == '\n') {
                ended = true;
            } else {
                length = append(b, length);
            }
        }
        if (length == 0 && !ended) {
            return null;
        }
        number++;
        return text(length > 0 && line[length - 1] == '\r' ? length - 1 : length);
    }

    private boolean readOn() throws IOException {
        buffer.clear();
        int read = 0;
        while (read == 0) {
            read = channel.read(buffer);
        }
        buffer.flip();
        return read > 0;
    }

    private int append(byte b, int length) throws RecordingException {
        if (length == LONGEST) {
            throw new RecordingException(
                    "Line " + (number + 1) + " of the CSV file has more than 65536 bytes.");
        }
        if (length == line.length) {
            line = Arrays.copyOf(line, 2 * length);
        }
        line[length] = b;
        return length + 1;
    }

    private String text(int length) {
        var text = new String(line, 0, length, StandardCharsets.UTF_8);
        return number == 1 && text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
    }

    /** Of the line handed out last, counted from 1. */
    long number() {
        return number;
    }

    /** Whether the line handed out last had an end; one without may be cut off. */
    boolean ended() {
        return ended;
    }
}
