package dev.isoline.dicom;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * The character sets supported, PS3.3 C.12.1.1.2; text that does not fit is refused, not mangled.
 */
public enum CharacterSet {
    /** The default repertoire; what holds where Specific Character Set is absent. */
    ISO_IR_6("ISO_IR 6", StandardCharsets.US_ASCII),
    ISO_IR_100("ISO_IR 100", StandardCharsets.ISO_8859_1),
    ISO_IR_192("ISO_IR 192", StandardCharsets.UTF_8);

    private final String term;
    private final Charset charset;

    CharacterSet(String term, Charset charset) {
        this.term = term;
        this.charset = charset;
    }

    /** Defined Term of Specific Character Set (0008,0005). */
    public String term() {
        return term;
    }

    static CharacterSet of(List<String> terms) throws DicomException {
        if (terms.isEmpty() || terms.size() == 1 && terms.get(0).isEmpty()) {
            return ISO_IR_6;
        }
        for (CharacterSet set : values()) {
            if (terms.size() == 1 && set.term.equals(terms.get(0))) {
                return set;
            }
        }
        throw new DicomException(
                Tag.SpecificCharacterSet,
                "is "
                        + String.join("\\", terms).replaceAll("[^A-Za-z0-9_ \\\\]", "?")
                        + "; supported are ISO_IR 6, ISO_IR 100 and ISO_IR 192");
    }

    String decode(int tag, byte[] bytes) throws DicomException {
        try {
            return charset.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
        } catch (CharacterCodingException e) {
            throw new DicomException(tag, "holds bytes that are not " + term);
        }
    }

    byte[] encode(int tag, String text) throws DicomException {
        try {
            ByteBuffer bytes = charset.newEncoder().encode(CharBuffer.wrap(text));
            byte[] exact = new byte[bytes.remaining()];
            bytes.get(exact);
            return exact;
        } catch (CharacterCodingException e) {
            throw new DicomException(tag, "holds a character outside " + term);
        }
    }
}
