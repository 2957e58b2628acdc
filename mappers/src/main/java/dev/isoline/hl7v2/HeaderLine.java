package dev.isoline.hl7v2;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** The bytes of the first segment, read before anything is known about the message. */
final class HeaderLine {

    private static final int BOM_LENGTH = 3;

    private HeaderLine() {}

    static boolean hasByteOrderMark(byte[] raw) {
        return raw.length >= BOM_LENGTH
                && raw[0] == (byte) 0xEF
                && raw[1] == (byte) 0xBB
                && raw[2] == (byte) 0xBF;
    }

    /** Where the text begins: after a byte order mark and blank lines. */
    static int start(byte[] raw) {
        int at = hasByteOrderMark(raw) ? BOM_LENGTH : 0;
        while (at < raw.length && isLineEnd(raw[at])) {
            at++;
        }
        return at;
    }

    static MessageHeader read(byte[] raw) {
        return read(raw, "MSH");
    }

    /** BHS (ch. 2.15.2) lays its first seven fields out as MSH does. */
    static MessageHeader read(byte[] raw, String segment) {
        int start = start(raw);
        int end = start;
        while (end < raw.length && !isLineEnd(raw[end])) {
            end++;
        }
        // ISO 8859-1 keeps every byte as one character, so that MSH-18 can be found first
        var latin = read(new String(raw, start, end - start, StandardCharsets.ISO_8859_1), segment);
        var encoding = encoding(latin, raw, start, end);
        var exact = read(new String(raw, start, end - start, encoding), segment);
        return new MessageHeader(exact.delimiters(), encoding, exact.fields());
    }

    private static MessageHeader read(String line, String segment) {
        return Delimiters.of(line)
                .filter(d -> line.startsWith(segment))
                .map(d -> new MessageHeader(d, StandardCharsets.ISO_8859_1, fields(line, d)))
                .orElseGet(MessageHeader::unreadable);
    }

    private static List<String> fields(String line, Delimiters delimiters) {
        var fields = new ArrayList<String>();
        fields.add(String.valueOf(delimiters.field()));
        String separator = Pattern.quote(String.valueOf(delimiters.field()));
        fields.addAll(List.of(line.substring(4).split(separator, -1)));
        return List.copyOf(fields);
    }

    private static Charset encoding(MessageHeader header, byte[] raw, int start, int end) {
        return Table0211.charset(header.characterSet())
                .orElseGet(
                        () ->
                                Er7Decoder.decodes(raw, start, end, StandardCharsets.UTF_8)
                                        ? StandardCharsets.UTF_8
                                        : StandardCharsets.ISO_8859_1);
    }

    static boolean isLineEnd(byte b) {
        return b == '\r' || b == '\n';
    }
}
