package dev.isoline.hl7v2;

import ca.uhn.hl7v2.parser.EncodingCharacters;
import ca.uhn.hl7v2.parser.Escaping;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Escape sequences, HL7 v2.5.1 ch. 2.7. Formatting ({@code .br}, {@code H}), character set switches
 * and sequences nobody knows stay in the text as sent; a lone escape character is only a character.
 */
final class Er7Escaping implements Escaping {

    private static final Pattern KEPT = Pattern.compile("[HN]|\\.[^|^~&]*|[XCMZ][0-9A-Za-z]*");
    private static final Pattern HEX = Pattern.compile("X((?:[0-9A-Fa-f]{2})+)");

    /**
     * Text knows no formatting of its own: each delimiter is escaped, a line break is {@code .br}.
     */
    @Override
    public String escape(String text, EncodingCharacters delimiters) {
        var declared =
                new Delimiters(
                        delimiters.getFieldSeparator(), delimiters.toString().substring(0, 4));
        String lineBreak =
                delimiters.getEscapeCharacter() + ".br" + delimiters.getEscapeCharacter();
        return text.lines().map(declared::escape).collect(Collectors.joining(lineBreak));
    }

    @Override
    public String unescape(String text, EncodingCharacters delimiters) {
        char escape = delimiters.getEscapeCharacter();
        if (text.indexOf(escape) < 0) {
            return text;
        }
        var plain = new StringBuilder(text.length());
        int at = 0;
        while (at < text.length()) {
            at =
                    text.charAt(at) == escape
                            ? sequence(text, at, delimiters, plain)
                            : character(text, at, plain);
        }
        return plain.toString();
    }

    private static int character(String text, int at, StringBuilder plain) {
        plain.append(text.charAt(at));
        return at + 1;
    }

    /** Takes what begins at an escape character; returns where the text goes on. */
    private static int sequence(
            String text, int at, EncodingCharacters delimiters, StringBuilder plain) {
        int end = text.indexOf(delimiters.getEscapeCharacter(), at + 1);
        if (end < 0) {
            return character(text, at, plain);
        }
        String code = text.substring(at + 1, end);
        String meaning = meaning(code, delimiters);
        if (meaning != null) {
            plain.append(meaning);
        } else if (KEPT.matcher(code).matches()) {
            plain.append(text, at, end + 1);
        } else {
            return character(text, at, plain);
        }
        return end + 1;
    }

    private static String meaning(String code, EncodingCharacters delimiters) {
        var hex = HEX.matcher(code);
        if (hex.matches()) {
            return bytes(hex.group(1));
        }
        return switch (code) {
            case "F" -> String.valueOf(delimiters.getFieldSeparator());
            case "S" -> String.valueOf(delimiters.getComponentSeparator());
            case "R" -> String.valueOf(delimiters.getRepetitionSeparator());
            case "T" -> String.valueOf(delimiters.getSubcomponentSeparator());
            case "E" -> String.valueOf(delimiters.getEscapeCharacter());
            default -> null;
        };
    }

    /** Senders pad to two bytes ({@code X000d}); a zero byte is no text and is left out. */
    private static String bytes(String hex) {
        var bytes = new ByteArrayOutputStream();
        for (int i = 0; i < hex.length(); i += 2) {
            int value = Integer.parseInt(hex.substring(i, i + 2), 16);
            if (value != 0) {
                bytes.write(value);
            }
        }
        byte[] raw = bytes.toByteArray();
        boolean utf8 = Er7Decoder.decodes(raw, 0, raw.length, StandardCharsets.UTF_8);
        return new String(raw, utf8 ? StandardCharsets.UTF_8 : StandardCharsets.ISO_8859_1);
    }
}
