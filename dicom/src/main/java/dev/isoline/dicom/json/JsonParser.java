package dev.isoline.dicom.json;

import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.ReadLimits;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;

/**
 * Reads one JSON text, RFC 8259, in UTF-8: nothing but what its grammar allows, no name twice in an
 * object, within limits of nesting, of objects and arrays, and of memory.
 */
final class JsonParser {

    /** Objects and arrays that one sequence inside a sequence takes. */
    private static final int LEVELS_OF_A_SEQUENCE = 3;

    /** About what a value takes in memory besides its characters. */
    private static final int OVERHEAD = 64;

    private static final int LONGEST_NUMBER = 64;
    private static final int END = -1;

    private final Reader in;
    private final ReadLimits limits;
    private final char[] buffer = new char[8192];
    private int next;
    private int available;
    private long passed;
    private long memory;
    private int containers;

    private JsonParser(InputStream in, ReadLimits limits) {
        this.in = new InputStreamReader(in, StandardCharsets.UTF_8.newDecoder());
        this.limits = limits;
    }

    static Json parse(InputStream in, ReadLimits limits) throws IOException {
        try {
            var parser = new JsonParser(in, limits);
            Json json = parser.value(0);
            if (parser.skipSpace() != END) {
                throw parser.fault("goes on after its end");
            }
            return json;
        } catch (CharacterCodingException e) {
            throw new DicomException("The JSON is not UTF-8.");
        }
    }

    private DicomException fault(String fault) {
        return new DicomException("The JSON " + fault + ", at character " + (passed + next) + ".");
    }

    private int peek() throws IOException {
        if (next == available) {
            passed += available;
            next = 0;
            available = Math.max(0, in.read(buffer));
        }
        return available == 0 ? END : buffer[next];
    }

    private int take() throws IOException {
        int c = peek();
        if (c != END) {
            next++;
        }
        return c;
    }

    private void expect(String token) throws IOException {
        for (int i = 0; i < token.length(); i++) {
            if (take() != token.charAt(i)) {
                throw fault("has something else where " + token + " is expected");
            }
        }
    }

    private int skipSpace() throws IOException {
        int c = peek();
        while (c == ' ' || c == '\t' || c == '\n' || c == '\r') {
            next++;
            c = peek();
        }
        return c;
    }

    private Json value(int depth) throws IOException {
        int first = skipSpace();
        return switch (first) {
            case '{' -> object(depth);
            case '[' -> array(depth);
            case '"' -> new Json.Text(string());
            case 't' -> literal("true", Json.Literal.TRUE);
            case 'f' -> literal("false", Json.Literal.FALSE);
            case 'n' -> literal("null", Json.Literal.NULL);
            default -> number();
        };
    }

    private Json literal(String token, Json.Literal literal) throws IOException {
        expect(token);
        hold(0);
        return literal;
    }

    private void hold(int characters) throws DicomException {
        memory += OVERHEAD + characters;
        if (memory > limits.memory()) {
            throw fault("exceeds the limit of bytes held in memory");
        }
    }

    private void open(int depth) throws DicomException {
        next++;
        hold(OVERHEAD);
        if (depth > (limits.depth() + 1L) * LEVELS_OF_A_SEQUENCE) {
            throw fault("is nested too deep");
        }
        if (++containers > limits.elements()) {
            throw fault("has more than " + limits.elements() + " objects and arrays");
        }
    }

    private Json object(int depth) throws IOException {
        open(depth);
        var members = new LinkedHashMap<String, Json>();
        if (skipSpace() == '}') {
            next++;
            return new Json.Members(members);
        }
        do {
            skipSpace();
            String name = string();
            skipSpace();
            expect(":");
            if (members.put(name, value(depth + 1)) != null) {
                throw fault("has a name twice in one object");
            }
        } while (goesOn('}'));
        return new Json.Members(members);
    }

    private Json array(int depth) throws IOException {
        open(depth);
        var values = new ArrayList<Json>();
        if (skipSpace() == ']') {
            next++;
            return new Json.Array(values);
        }
        do {
            values.add(value(depth + 1));
        } while (goesOn(']'));
        return new Json.Array(values);
    }

    private boolean goesOn(char end) throws IOException {
        skipSpace();
        int c = take();
        if (c != ',' && c != end) {
            throw fault("has neither a comma nor " + end + " after a value");
        }
        return c == ',';
    }

    private String string() throws IOException {
        expect("\"");
        var text = new StringBuilder();
        for (int c = take(); c != '"'; c = take()) {
            if (c < ' ') {
                throw fault(c == END ? "ends in a string" : "has a control character in a string");
            }
            text.append(c == '\\' ? escaped() : (char) c);
            if (memory + text.length() > limits.memory()) {
                throw fault("exceeds the limit of bytes held in memory");
            }
        }
        hold(text.length());
        return text.toString();
    }

    private char escaped() throws IOException {
        int c = take();
        int known = "\"\\/bfnrt".indexOf(c);
        if (known >= 0) {
            return "\"\\/\b\f\n\r\t".charAt(known);
        }
        if (c != 'u') {
            throw fault("has an escape that JSON does not know");
        }
        int code = 0;
        for (int i = 0; i < 4; i++) {
            int digit = Character.digit(take(), 16);
            if (digit < 0) {
                throw fault("has an escape that JSON does not know");
            }
            code = code << 4 | digit;
        }
        return (char) code;
    }

    private Json number() throws IOException {
        var digits = new StringBuilder();
        while ("+-.0123456789eE".indexOf(peek()) >= 0) {
            if (digits.length() == LONGEST_NUMBER) {
                throw fault("has a number of more than " + LONGEST_NUMBER + " characters");
            }
            digits.append((char) take());
        }
        if (!JsonValues.NUMBER.matcher(digits).matches()) {
            throw fault(peek() == END ? "ends too early" : "has no value where one is expected");
        }
        hold(digits.length());
        return new Json.Numeral(digits.toString());
    }
}
